import { isOneLine } from '../sensors/plainText.ts';
import { REFUSALS } from './refusals.ts';

/** What a person says of themselves, for the screens only: no recording holds it. */
export interface About {
  readonly hand?: 'left' | 'right';
  /** What they want to be called; empty for nothing. */
  readonly name?: string;
}

export const LONGEST_NAME = 40;

/** What is wrong with a name; `null` where nothing is. */
export function nameRefusal(name: string): string | null {
  if ([...name].length > LONGEST_NAME) return REFUSALS['name-too-long'];
  return isOneLine(name) ? null : REFUSALS['name-control'];
}
