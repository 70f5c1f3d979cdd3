import { type Plan, askedRatio } from '../../../coaching/plan.ts';
import type { SessionSummary } from '../../../streaming/sessionsContract.ts';

export interface PlanKept {
  readonly mix: {
    /** `null`: no ball was hit. */
    readonly kept: boolean | null;
    readonly balls: number;
    readonly ballsInMix: number;
    readonly asked: Plan['ratio'];
  };
  readonly volume: { readonly kept: boolean; readonly done: number; readonly most: number };
}

/** Whether a session kept to what the plan asks of a session. */
export function planKept(summary: SessionSummary, plan: Plan): PlanKept {
  const done = summary.rehearsals + summary.balls;
  const { balls, ballsInMix } = summary;
  const most = plan.volume.perSession;
  return {
    mix: { kept: summary.mixKept, balls, ballsInMix, asked: askedRatio(plan) },
    volume: { kept: done <= most, done, most },
  };
}
