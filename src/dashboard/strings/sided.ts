import { fill } from '../../sensors/sentence.ts';
import { t } from './strings.ts';

/** A text in which `{trail}` and `{lead}` stand for the player's sides; a language may do without. */
export const sided = (text: string, hand: 'left' | 'right' | null): string =>
  fill(text, t.sides[hand ?? 'right']);
