import { TOGETHER_MS } from './cues.ts';
import { MEASURE_INFO, type MeasureKey } from './measureInfo.ts';
import type { Target } from './plan.ts';
import { shownNumber } from './shown.ts';

/** The words and the way of writing numbers around a value. */
export interface ValueWords {
  readonly notTaken: string;
  readonly together: string;
  /** A number as a decimal with a point and a hyphen, written as the language does. */
  readonly number: (decimal: string) => string;
  readonly fromTo: (min: string, max: string) => string;
  readonly atLeast: (min: string) => string;
  readonly atMost: (max: string) => string;
  readonly any: string;
}

export const ENGLISH: ValueWords = {
  notTaken: 'not measured',
  together: 'together',
  number: (decimal) => decimal,
  fromTo: (min, max) => `from ${min} to ${max}`,
  atLeast: (min) => `at least ${min}`,
  atMost: (max) => `at most ${max}`,
  any: 'any',
};

/** A minus sign where a hyphen stands before a digit. */
export const minusSigns = (text: string): string => text.replaceAll(/-(?=\d)/g, '−');

/** "arm kept turned out (external rotation)" */
export function measureLabel(key: MeasureKey): string {
  const { name, term } = MEASURE_INFO[key];
  return term === null ? name : `${name} (${term})`;
}

/** The value as it is shown beside its target (`shown.ts`), with its unit; "together" for a small lead. */
export function measureText(
  key: MeasureKey,
  value: number | null,
  target?: Target,
  words: ValueWords = ENGLISH,
): string {
  if (value === null || !Number.isFinite(value)) return words.notTaken;
  if (key === 'chestLeadMs' && isTogether(value, target)) return words.together;
  return measureNumber(key, shownNumber(value, MEASURE_INFO[key].decimals, [target]), words);
}

/** A small lead has a word of its own, but not where it would hide on which side of the target it lies. */
const isTogether = (leadMs: number, { min, max }: Target = {}): boolean =>
  Math.abs(leadMs) < TOGETHER_MS &&
  [min, max].every((end) => end === undefined || Math.abs(end) >= TOGETHER_MS);

/** A rounded value with its unit, with its sign where that means something. */
export function measureNumber(key: MeasureKey, shown: string, { number }: Writing): string {
  const { unit, signed } = MEASURE_INFO[key];
  return `${signed && Number(shown) > 0 ? '+' : ''}${withUnit(number(shown), unit)}`;
}

export type Writing = Pick<ValueWords, 'number'>;

export type FallUnit = 'cm' | 'in';
/** International inch, exact since 1959. */
const CM_PER_INCH = 2.54;

/** "24 cm" or "9 in": how far the club fell; whole units, since its accuracy allows no more. */
export const fallText = (cm: number, unit: FallUnit): string =>
  `${Math.round(unit === 'cm' ? cm : cm / CM_PER_INCH)} ${unit}`;

/** A ratio as a percentage, a decimal more where rounding would carry it over one of the `edges` (ratios). */
export const percentText = (
  ratio: number,
  edges: readonly number[] = [],
  words: Writing = ENGLISH,
): string =>
  `${words.number(
    shownNumber(
      100 * ratio,
      0,
      edges.map((edge) => ({ min: 100 * edge })),
    ),
  )} %`;

/** "at least 1.0 s", "at most 450 ms", "from 20 to 40°" */
export function targetText(
  key: MeasureKey,
  { min, max }: Target,
  words: ValueWords = ENGLISH,
): string {
  const { unit } = MEASURE_INFO[key];
  const bare = (end: number): string => words.number(String(end));
  const whole = (end: number): string => withUnit(bare(end), unit);
  if (min !== undefined && max !== undefined) return words.fromTo(bare(min), whole(max));
  if (min !== undefined) return words.atLeast(whole(min));
  return max === undefined ? words.any : words.atMost(whole(max));
}

export const withUnit = (text: string, unit: string): string =>
  unit === '°' ? `${text}°` : `${text} ${unit}`;
