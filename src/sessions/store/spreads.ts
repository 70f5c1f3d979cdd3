import type { AnalysisResult, JudgedRepetition } from '../../analysis/result.ts';
import type { CarryOver } from '../../coaching/judgement.ts';
import { TARGET_MEASURES, type TargetMeasure } from '../../coaching/plan.ts';
import { percentile } from '../../math/stats.ts';

/** Median and quartiles of one measure over a session. */
export interface Spread {
  readonly count: number;
  readonly low: number;
  readonly median: number;
  readonly high: number;
}

/** Rehearsals and balls apart; a measure that was never taken is left out. */
export interface MeasureSpreads {
  readonly rehearsals: Partial<Record<TargetMeasure, Spread>>;
  readonly balls: Partial<Record<TargetMeasure, Spread>>;
  /** Left out by the versions that did not keep it. */
  readonly carryOver?: CarryOver;
}

export const NO_SPREADS: MeasureSpreads = { rehearsals: {}, balls: {} };

export const spreadsOf = ({
  repetitions,
  carryOver,
}: Pick<AnalysisResult, 'repetitions' | 'carryOver'>): MeasureSpreads => ({
  rehearsals: spreads(repetitions.filter((r) => r.kind === 'rehearsal')),
  balls: spreads(repetitions.filter((r) => r.kind === 'ball')),
  carryOver,
});

function spreads(repetitions: readonly JudgedRepetition[]): Partial<Record<TargetMeasure, Spread>> {
  const result: Partial<Record<TargetMeasure, Spread>> = {};
  for (const measure of TARGET_MEASURES) {
    const values = repetitions.map((r) => valueOf(r, measure)).filter((v) => v !== null);
    const [low, median, high] = [0.25, 0.5, 0.75].map((p) => percentile(values, p) ?? 0);
    if (values.length > 0)
      result[measure] = { count: values.length, low: low!, median: median!, high: high! };
  }
  return result;
}

function valueOf(r: JudgedRepetition, measure: TargetMeasure): number | null {
  if (measure !== 'holdS') return r.measures[measure];
  return r.kind === 'rehearsal' ? r.holdS : null;
}
