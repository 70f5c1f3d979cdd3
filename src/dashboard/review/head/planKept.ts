import { type Plan, askedRatio } from '../../../coaching/plan.ts';
import type { SessionDetail } from '../../../streaming/sessionsContract.ts';

export interface PlanKept {
  readonly mix: {
    /** `null`: no ball was hit. */
    readonly kept: boolean | null;
    readonly balls: number;
    readonly ballsInMix: number;
    readonly asked: Plan['ratio'];
  };
  readonly volume: Volume;
  /** Of the seven days that end with the session; `null` where they are not known. */
  readonly week: Volume | null;
}

interface Volume {
  readonly kept: boolean;
  readonly done: number;
  readonly most: number;
}

const volumeOf = (done: number, most: number): Volume => ({ kept: done <= most, done, most });

/** Whether a session kept to what the plan asks of a session and of a week. */
export function planKept(
  detail: Pick<SessionDetail, 'summary' | 'plan' | 'weekRepetitions'>,
): PlanKept {
  const { summary, plan, weekRepetitions } = detail;
  const { balls, ballsInMix, mixKept: kept } = summary;
  return {
    mix: { kept, balls, ballsInMix, asked: askedRatio(plan) },
    volume: volumeOf(summary.rehearsals + balls, plan.volume.perSession),
    week: weekRepetitions === undefined ? null : volumeOf(weekRepetitions, plan.volume.perWeek),
  };
}
