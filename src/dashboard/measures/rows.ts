import type { JudgedRepetition } from '../../coaching/judgement.ts';
import {
  type Plan,
  TARGET_MEASURES,
  type Target,
  type TargetMeasure,
} from '../../coaching/plan.ts';

/** Ends of the bar, in the measure's unit: wide enough for a usual repetition, fixed so that bars compare. */
export interface Scale {
  readonly low: number;
  readonly high: number;
}

export const SCALES: Record<TargetMeasure, Scale> = {
  holdS: { low: 0, high: 2.5 },
  chestLeadMs: { low: -150, high: 200 },
  leanChangeDeg: { low: -25, high: 15 },
  addedFlexionDeg: { low: -20, high: 30 },
  keptRotationDeg: { low: -45, high: 15 },
  turnTowardTargetDeg: { low: 0, high: 90 },
  releaseToCatchMs: { low: 0, high: 700 },
};

export interface MeasureRow {
  readonly measure: TargetMeasure;
  readonly value: number | null;
  readonly target: Target | null;
  readonly passed: boolean | null;
}

/** The rows of a repetition: a rehearsal's checks as judged; a ball's measures beside the same targets, not judged. */
export function measureRows(repetition: JudgedRepetition, plan: Plan): readonly MeasureRow[] {
  if (repetition.kind === 'rehearsal') return repetition.verdict.checks;
  return TARGET_MEASURES.flatMap((measure) => {
    const value = measure === 'holdS' ? null : repetition.measures[measure];
    return value === null ? [] : [{ measure, value, target: plan.targets[measure], passed: null }];
  });
}

/** Place on the scale, 0..100, kept inside it. */
export function place({ low, high }: Scale, value: number): number {
  return 100 * Math.min(1, Math.max(0, (value - low) / (high - low)));
}
