import type { Strings } from '../shape.ts';

export const settings: Strings['settings'] = {
  language: 'Sprache',
  languageWhy: 'Die Seite lädt neu; ein Training läuft weiter.',
};
