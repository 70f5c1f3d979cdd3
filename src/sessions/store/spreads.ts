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

/** Of the rehearsals that were scored, those whose value was taken and those that reached the target. */
interface Checked {
  readonly scored: number;
  readonly passed: number;
}

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
    checks: checksOf(result),
  };
}

function checksOf({
  repetitions,
}: Pick<AnalysisResult, 'repetitions'>): NonNullable<MeasureSpreads['checks']> {
  const checks = repetitions
    .filter(isCounted)
    .flatMap((r) => (r.kind === 'rehearsal' && r.verdict.passed !== null ? r.verdict.checks : []))
    .filter(({ passed }) => passed !== null);
  const result: Partial<Record<TargetMeasure, Checked>> = {};
  for (const { measure, passed } of checks) {
    const { scored: n, passed: good } = result[measure] ?? { scored: 0, passed: 0 };
    result[measure] = { scored: n + 1, passed: good + (passed === true ? 1 : 0) };
  }
  return result;
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
