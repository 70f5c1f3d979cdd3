import type { AnalysisResult, JudgedRepetition } from '../../analysis/result.ts';
import type { CarryOver } from '../../coaching/judgement.ts';
import {
  type Checked,
  type Spread,
  checkedOf,
  poolValues,
  poolsOf,
  spreadOf,
} from '../../coaching/pools.ts';
import { TARGET_MEASURES, type TargetMeasure } from '../../coaching/plan.ts';

/** Rehearsals and balls apart; a measure that was never taken is left out. */
export interface MeasureSpreads {
  readonly rehearsals: Partial<Record<TargetMeasure, Spread>>;
  readonly balls: Partial<Record<TargetMeasure, Spread>>;
  /** Left out by the versions that did not keep it. */
  readonly carryOver?: CarryOver;
  /** Rehearsals scored and passed, target by target; left out by the versions that did not keep it. */
  readonly checks?: Partial<Record<TargetMeasure, Checked>>;
}

export const NO_SPREADS: MeasureSpreads = { rehearsals: {}, balls: {} };

export function spreadsOf({
  repetitions,
  carryOver,
}: Pick<AnalysisResult, 'repetitions' | 'carryOver'>): MeasureSpreads {
  const { rehearsals, balls } = poolsOf(repetitions);
  return {
    rehearsals: spreads(rehearsals),
    balls: spreads(balls),
    carryOver,
    checks: each((measure) => {
      const checked = checkedOf(rehearsals, measure);
      return checked.scored > 0 ? checked : null;
    }),
  };
}

const spreads = (pool: readonly JudgedRepetition[]): MeasureSpreads['balls'] =>
  each((measure) => spreadOf(poolValues(pool, measure)));

/** By measure; one without a value is left out. */
function each<T>(of: (measure: TargetMeasure) => T | null): Partial<Record<TargetMeasure, T>> {
  const entries = TARGET_MEASURES.flatMap((measure) => {
    const value = of(measure);
    return value === null ? [] : [[measure, value] as const];
  });
  return Object.fromEntries(entries) as Partial<Record<TargetMeasure, T>>;
}
