import { measureValue } from '../../coaching/measureValue.ts';
import type { AnalysisResult, JudgedRepetition } from '../../analysis/result.ts';
import { isCounted } from '../../coaching/asSaid.ts';
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

/** Every value of each measure, in the order of the repetitions. */
interface MeasureValues {
  readonly rehearsals: Partial<Record<TargetMeasure, readonly number[]>>;
  readonly balls: Partial<Record<TargetMeasure, readonly number[]>>;
}

function valuesOf({ repetitions }: Pick<AnalysisResult, 'repetitions'>): MeasureValues {
  const counted = repetitions.filter(isCounted);
  return {
    rehearsals: values(counted.filter((r) => r.kind === 'rehearsal')),
    balls: values(counted.filter((r) => r.kind === 'ball')),
  };
}

export function spreadsOf(
  result: Pick<AnalysisResult, 'repetitions' | 'carryOver'>,
): MeasureSpreads {
  const { rehearsals, balls } = valuesOf(result);
  return {
    rehearsals: spreads(rehearsals),
    balls: spreads(balls),
    carryOver: result.carryOver,
  };
}

type Values = MeasureValues['rehearsals'];

function values(repetitions: readonly JudgedRepetition[]): Values {
  const result: Record<string, readonly number[]> = {};
  for (const measure of TARGET_MEASURES) {
    const taken = repetitions.map((r) => measureValue(r, measure)).filter((v) => v !== null);
    if (taken.length > 0) result[measure] = taken;
  }
  return result;
}

function spreads(all: Values): Partial<Record<TargetMeasure, Spread>> {
  const result: Partial<Record<TargetMeasure, Spread>> = {};
  for (const measure of TARGET_MEASURES) {
    const taken = all[measure];
    if (taken === undefined) continue;
    const [low, median, high] = [0.25, 0.5, 0.75].map((p) => percentile(taken, p) ?? 0);
    result[measure] = { count: taken.length, low: low!, median: median!, high: high! };
  }
  return result;
}
