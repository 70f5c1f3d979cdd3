import { TOGETHER_MS } from './cues.ts';
import { MEASURE_INFO, type MeasureKey } from './measureInfo.ts';
import type { Target } from './plan.ts';

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

const ENGLISH: ValueWords = {
  notTaken: 'not taken',
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

/**
 * The value as it is shown: rounded to what its accuracy allows, with its unit; "together" for a small lead.
 * Where rounding would carry a value over an end of the target, decimals are added until it does not.
 */
export function measureText(
  key: MeasureKey,
  value: number | null,
  target?: Target,
  words: ValueWords = ENGLISH,
): string {
  if (value === null || !Number.isFinite(value)) return words.notTaken;
  if (key === 'chestLeadMs' && Math.abs(value) < TOGETHER_MS) return words.together;
  const { unit, decimals, signed } = MEASURE_INFO[key];
  const shown = roundedText(value, enoughDecimals(value, decimals, target));
  const sign = signed && Number(shown) > 0 ? '+' : '';
  return `${sign}${withUnit(words.number(shown), unit)}`;
}

export type FallUnit = 'cm' | 'in';
/** International inch, exact since 1959. */
const CM_PER_INCH = 2.54;

/** "24 cm" or "9 in": how far the club fell; whole units, since its accuracy allows no more. */
export const fallText = (cm: number, unit: FallUnit): string =>
  `${Math.round(unit === 'cm' ? cm : cm / CM_PER_INCH)} ${unit}`;

/** A difference of two values: always with its sign, no "together" for a small one. */
export function differenceText(
  key: MeasureKey,
  difference: number,
  { number }: Pick<ValueWords, 'number'> = ENGLISH,
): string {
  const { unit, decimals } = MEASURE_INFO[key];
  const shown = roundedText(difference, decimals);
  return `${Number(shown) > 0 ? '+' : ''}${withUnit(number(shown), unit)}`;
}

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

const withUnit = (text: string, unit: string): string =>
  unit === '°' ? `${text}°` : `${text} ${unit}`;

function roundedText(value: number, decimals: number): string {
  const step = 10 ** Math.max(0, -decimals);
  const text = (Math.round(value / step) * step).toFixed(0);
  const shown = decimals > 0 ? value.toFixed(decimals) : text;
  return Number(shown) === 0 ? shown.replace('-', '') : shown;
}

const MOST_DECIMALS = 3;

function enoughDecimals(value: number, decimals: number, target: Target = {}): number {
  const shown = Number(roundedText(value, decimals));
  const crosses =
    (target.min !== undefined && value < target.min !== shown < target.min) ||
    (target.max !== undefined && value > target.max !== shown > target.max);
  return crosses && decimals < MOST_DECIMALS
    ? enoughDecimals(value, decimals + 1, target)
    : decimals;
}
