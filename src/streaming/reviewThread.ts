import type { AnalysisResult } from '../analysis/result.ts';
import { type Failed, errorOf } from '../sessions/threads/failed.ts';
import { jobThread } from '../sessions/threads/jobThread.ts';
import { startThread } from '../sessions/threads/startThread.ts';
import type { Reviewed } from './reviewing.ts';
import type { RepetitionCurves, SessionOverview } from './sessionsContract.ts';

/** What the thread is asked to do: compute, and keep it below `cache`. */
export interface ReviewJob {
  readonly reviewed: Reviewed;
  readonly cache: string | null;
}

export interface ReviewDone {
  readonly analysis: AnalysisResult;
  readonly overview: SessionOverview;
  /** `null` where they are on the disk: they would be many to hand over. */
  readonly curves: readonly RepetitionCurves[] | null;
}

export type ReviewAnswer = ({ readonly ok: true } & ReviewDone) | Failed;

/** Computes reviews in a thread of its own, one after the other: whatever they cost, a live practice does not wait. */
export interface ReviewThread {
  /** @throws SessionError where the recording cannot be reviewed */
  review(job: ReviewJob): Promise<ReviewDone>;
  close(): Promise<void>;
}

export function reviewThread(): ReviewThread {
  const thread = jobThread<ReviewJob, ReviewAnswer>({
    start: () => startThread('reviewWorker', import.meta.url),
    gone: (message) => ({ ok: false, code: null, message }),
  });
  return {
    async review(job) {
      const answer = await thread.run(job);
      if (answer.ok) return answer;
      throw errorOf(answer);
    },
    close: () => thread.close(),
  };
}
