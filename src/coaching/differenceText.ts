import { MEASURE_INFO, type MeasureKey } from './measureInfo.ts';
import {
  ENGLISH,
  type ValueWords,
  type Writing,
  measureNumber,
  measureText,
  withUnit,
} from './measureText.ts';
import type { Target } from './plan.ts';
import { shownComparison, shownDifference, shownNumber } from './shown.ts';

/** A rounded difference: always with its sign, no "together" for a small one. */
const signedText = (key: MeasureKey, shown: string, { number }: Writing): string =>
  `${Number(shown) > 0 ? '+' : ''}${withUnit(number(shown), MEASURE_INFO[key].unit)}`;

/** A difference that stands alone, without the two values. */
export const differenceText = (
  key: MeasureKey,
  difference: number,
  words: Writing = ENGLISH,
): string => signedText(key, shownNumber(difference, MEASURE_INFO[key].decimals), words);

/** Two values beside each other and how they differ, all as shown. */
export interface PairTexts {
  readonly here: string;
  readonly beside: string;
  /** `here` minus `beside`, of what is shown; `null` where either was not taken. */
  readonly difference: string | null;
  /** How sure the difference is. */
  readonly plusMinus: string;
  /** The difference as shown is more than how sure it is as shown. */
  readonly clear: boolean;
}

/**
 * Two values of one measure. Both errors are taken as independent, so the difference is sure to the root of 2 times
 * one value's accuracy.
 */
export function pairTexts(
  key: MeasureKey,
  here: number | null,
  beside: number | null,
  words: ValueWords = ENGLISH,
): PairTexts {
  const { decimals, unit, accuracy } = MEASURE_INFO[key];
  const shown = (value: number | null): string | null =>
    value === null || !Number.isFinite(value) ? null : shownNumber(value, decimals);
  const [a, b] = [shown(here), shown(beside)];
  const difference = a === null || b === null ? null : shownDifference(a, b);
  const sure = shownNumber(Math.SQRT2 * accuracy.plusMinus, decimals > 0 ? decimals + 1 : 0);
  const text = (value: string | null): string =>
    value === null ? words.notTaken : measureNumber(key, value, words);
  return {
    here: text(a),
    beside: text(b),
    difference: difference === null ? null : signedText(key, difference, words),
    plusMinus: `±${withUnit(words.number(sure), unit)}`,
    clear: difference !== null && Math.abs(Number(difference)) > Number(sure),
  };
}

/** Two medians of one measure, each beside the target of its day, and how they differ, all as shown. */
export interface ChangeTexts {
  readonly before: string;
  readonly now: string;
  /** `now` minus `before`, of what is shown. */
  readonly difference: string;
  readonly plusMinus: string;
  /** The difference as shown is more than what it is sure to as shown. */
  readonly clear: boolean;
}

/** @param sure what the difference is sure to, in the measure's unit */
export function changeTexts(
  key: MeasureKey,
  [before, now]: readonly [TargetedValue, TargetedValue],
  sure: number,
  words: ValueWords = ENGLISH,
): ChangeTexts {
  const { decimals, unit } = MEASURE_INFO[key];
  const shown = ({ value, target }: TargetedValue): string =>
    shownNumber(value, decimals, [target]);
  const text = ({ value, target }: TargetedValue): string => measureText(key, value, target, words);
  const difference = shownDifference(shown(now), shown(before));
  const sureShown = shownNumber(sure, decimals > 0 ? decimals + 1 : 0);
  return {
    before: text(before),
    now: text(now),
    difference: signedText(key, difference, words),
    plusMinus: `±${withUnit(words.number(sureShown), unit)}`,
    clear: Math.abs(Number(difference)) > Number(sureShown),
  };
}

interface TargetedValue {
  readonly value: number;
  readonly target: Target | undefined;
}

/** Middle and middle half of the sessions of a period. */
export interface Usual {
  readonly low: number;
  readonly median: number;
  readonly high: number;
}

interface UsualTexts {
  readonly low: string;
  readonly median: string;
  readonly high: string;
}

/** Two periods beside each other and how they differ, all as shown. */
export interface ComparisonTexts {
  readonly earlier: UsualTexts | null;
  readonly later: UsualTexts | null;
  /** Later minus earlier, of what is shown; `null` where either is missing. */
  readonly difference: string | null;
  readonly interval: { readonly low: string; readonly high: string } | null;
}

/** One decimal more than a single value has: what is compared are means over sessions. */
export function comparisonTexts(
  key: MeasureKey,
  earlier: Usual | null,
  later: Usual | null,
  interval: { readonly low: number; readonly high: number } | null,
  words: Writing = ENGLISH,
): ComparisonTexts {
  const { decimals, accuracy } = MEASURE_INFO[key];
  const compared =
    earlier === null || later === null
      ? null
      : shownComparison(
          { earlier: earlier.median, later: later.median },
          interval,
          decimals + 1,
          accuracy.plusMinus,
        );
  const text = (value: number): string =>
    measureNumber(key, shownNumber(value, compared?.decimals ?? decimals + 1), words);
  const usual = (u: Usual | null): UsualTexts | null =>
    u && { low: text(u.low), median: text(u.median), high: text(u.high) };
  const difference = (shown: string): string => signedText(key, shown, words);
  const ends = compared?.interval ?? null;
  return {
    earlier: usual(earlier),
    later: usual(later),
    difference: compared && difference(compared.difference),
    interval: ends && { low: difference(ends.low), high: difference(ends.high) },
  };
}
