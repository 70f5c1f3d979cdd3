import { isUnscored } from '../../../coaching/judge.ts';
import type { JudgedRehearsal, JudgedRepetition } from '../../../coaching/judgement.ts';
import {
  type Plan,
  TARGET_MEASURES,
  type Target,
  type TargetMeasure,
} from '../../../coaching/plan.ts';
import { percentile } from '../../../math/stats.ts';
import type { SpreadView } from '../../../streaming/sessionsContract.ts';
import { measureValue } from '../../../coaching/measureValue.ts';
import { type Corrections, NOT_CORRECTED } from '../view.ts';

/** One measure over a session. */
export interface Headline {
  readonly measure: TargetMeasure;
  readonly target: Target | null;
  readonly rehearsals: SpreadView | null;
  readonly balls: SpreadView | null;
  /** Rehearsals judged by the target, and how many of them reached it. */
  readonly judged: number;
  readonly reached: number;
}

/** Median and quartiles of the finite values; `null` without any. */
export function spreadOf(values: readonly number[]): SpreadView | null {
  const at = (p: number): number | null => percentile(values, p);
  const [low, median, high] = [at(0.25), at(0.5), at(0.75)];
  if (low === null || median === null || high === null) return null;
  return { count: values.length, low, median, high };
}

/** One whose kind was set by hand and that is not measured as that kind yet: its numbers stand for neither. */
const standing = (repetitions: readonly JudgedRepetition[], corrected: Corrections) =>
  repetitions.filter((r) => !isUnscored(r) && (corrected.get(r.index) ?? r.kind) === r.kind);

/** Every measure that the plan asks for or that was taken; rehearsals and balls apart, what is not scored left out. */
export function headlinesOf(
  repetitions: readonly JudgedRepetition[],
  plan: Plan,
  corrected: Corrections = NOT_CORRECTED,
): readonly Headline[] {
  const usable = standing(repetitions, corrected);
  const rehearsals = usable.filter((r): r is JudgedRehearsal => r.kind === 'rehearsal');
  const balls = usable.filter((r) => r.kind === 'ball');
  const spread = (all: readonly JudgedRepetition[], m: TargetMeasure): SpreadView | null =>
    spreadOf(all.map((r) => measureValue(r, m)).filter((v) => v !== null));
  return TARGET_MEASURES.map((measure) => {
    const verdicts = rehearsals
      .flatMap((r) => r.verdict.checks)
      .filter((c) => c.measure === measure && c.passed !== null);
    return {
      measure,
      target: plan.targets[measure],
      rehearsals: spread(rehearsals, measure),
      balls: spread(balls, measure),
      judged: verdicts.length,
      reached: verdicts.filter((c) => c.passed).length,
    };
  }).filter((h) => h.target !== null || h.rehearsals !== null || h.balls !== null);
}
