import type { JudgedRepetition } from '../../../coaching/judgement.ts';
import { MEASURE_INFO } from '../../../coaching/measureInfo.ts';
import { measureValue } from '../../../coaching/measureValue.ts';
import { TARGET_MEASURES, type TargetMeasure } from '../../../coaching/plan.ts';

export interface Difference {
  readonly measure: TargetMeasure;
  readonly here: number | null;
  readonly beside: number | null;
  /** `here` less `beside`; `null` where either was not taken. */
  readonly difference: number | null;
  /** How sure the difference is, in the measure's unit. */
  readonly plusMinus: number;
  /** The difference is larger than what it is sure to. */
  readonly clear: boolean;
}

/**
 * Two repetitions measure by measure; measures that neither has are left out. Both errors are taken as
 * independent, so the difference is sure to the root of 2 times one value's accuracy: on one person in one
 * session part of the error is common to both and cancels, how much is not known.
 */
export const differencesOf = (
  here: JudgedRepetition,
  beside: JudgedRepetition,
): readonly Difference[] =>
  TARGET_MEASURES.map((measure) => {
    const [a, b] = [measureValue(here, measure), measureValue(beside, measure)];
    const difference = a === null || b === null ? null : a - b;
    const plusMinus = Math.SQRT2 * MEASURE_INFO[measure].accuracy.plusMinus;
    const clear = difference !== null && Math.abs(difference) > plusMinus;
    return { measure, here: a, beside: b, difference, plusMinus, clear };
  }).filter(({ here: a, beside: b }) => a !== null || b !== null);
