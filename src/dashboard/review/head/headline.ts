import type { JudgedRepetition } from '../../../coaching/judgement.ts';
import {
  type Plan,
  TARGET_MEASURES,
  type Target,
  type TargetMeasure,
} from '../../../coaching/plan.ts';
import { checkedOf, poolValues, poolsOf, spreadOf } from '../../../coaching/pools.ts';
import type { SpreadView } from '../../../streaming/sessionsContract.ts';
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

/** One whose kind was set by hand and that is not measured as that kind yet: its numbers stand for neither. */
const standing = (repetitions: readonly JudgedRepetition[], corrected: Corrections) =>
  repetitions.filter((r) => (corrected.get(r.index) ?? r.kind) === r.kind);

/** Every measure that the plan asks for or that was taken; rehearsals and balls apart, what is not scored left out. */
export function headlinesOf(
  repetitions: readonly JudgedRepetition[],
  plan: Plan,
  corrected: Corrections = NOT_CORRECTED,
): readonly Headline[] {
  const { rehearsals, balls } = poolsOf(standing(repetitions, corrected));
  const spread = (pool: readonly JudgedRepetition[], m: TargetMeasure): SpreadView | null =>
    spreadOf(poolValues(pool, m));
  return TARGET_MEASURES.map((measure) => {
    const { scored, passed } = checkedOf(rehearsals, measure);
    return {
      measure,
      target: plan.targets[measure],
      rehearsals: spread(rehearsals, measure),
      balls: spread(balls, measure),
      judged: scored,
      reached: passed,
    };
  }).filter((h) => h.target !== null || h.rehearsals !== null || h.balls !== null);
}
