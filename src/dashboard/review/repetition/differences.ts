import type { PairTexts } from '../../../coaching/differenceText.ts';
import type { JudgedRepetition } from '../../../coaching/judgement.ts';
import { measureValue } from '../../../coaching/measureValue.ts';
import { TARGET_MEASURES, type TargetMeasure } from '../../../coaching/plan.ts';
import { t } from '../../strings/strings.ts';

export interface Difference extends PairTexts {
  readonly measure: TargetMeasure;
}

/**
 * Two repetitions measure by measure; measures that neither has are left out. On one person in one session part of the
 * error is common to both and cancels, how much is not known; it is not taken off.
 */
export const differencesOf = (
  here: JudgedRepetition,
  beside: JudgedRepetition,
): readonly Difference[] =>
  TARGET_MEASURES.flatMap((measure) => {
    const [a, b] = [measureValue(here, measure), measureValue(beside, measure)];
    return a === null && b === null ? [] : [{ measure, ...t.measures.pair(measure, a, b) }];
  });
