import type { Strings } from '../shape.ts';
import { writing } from './numbers.ts';

export const drafts: Strings['drafts'] = {
  restored: (atMs, nowMs) => `Entwurf von ${writing.timeOf(atMs, nowMs)} wiederhergestellt.`,
  discard: 'Entwurf verwerfen',
};
