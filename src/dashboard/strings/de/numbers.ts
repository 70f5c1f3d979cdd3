import type { ValueWords } from '../../../coaching/measureText.ts';
import { localeWriting } from '../locale.ts';

export const writing = localeWriting('de-DE');

/** „1 Ball“, „3 Bälle“ */
export const count = (n: number, one: string, many: string): string =>
  `${n} ${n === 1 ? one : many}`;

export const VALUE_WORDS: ValueWords = {
  notTaken: 'nicht gemessen',
  together: 'gleichzeitig',
  number: writing.written,
  fromTo: (min, max) => `von ${min} bis ${max}`,
  atLeast: (min) => `mindestens ${min}`,
  atMost: (max) => `höchstens ${max}`,
  any: 'beliebig',
};
