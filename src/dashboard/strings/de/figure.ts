import type { Strings } from '../shape.ts';

export const figure: Strings['figure'] = {
  solid: 'Kräftig: gemessen',
  pale: 'Blass: nur zur Orientierung gezeichnet',
  paleShort: 'Blass: gezeichnet',
};
