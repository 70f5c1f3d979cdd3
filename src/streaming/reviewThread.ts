import type { AnalysisResult } from '../analysis/result.ts';
import { SessionError, type SessionErrorCode } from '../sessions/sessionError.ts';
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

export type ReviewAnswer =
  | ({ readonly ok: true } & ReviewDone)
  /** `code`: of a `SessionError`. */
  | { readonly ok: false; readonly code: SessionErrorCode | null; readonly message: string };

/** Computes reviews in a thread of its own, one after the other: whatever they cost, a live practice does not wait. */
export interface ReviewThread {
  /** @throws SessionError where the recording cannot be reviewed */
  review(job: ReviewJob): Promise<ReviewDone>;
  close(): Promise<void>;
}

export function reviewThread(): ReviewThread {
  const thread = jobThread<ReviewJob, ReviewAnswer>({
    start: () => {
      const worker = startThread('reviewWorker', import.meta.url);
      worker.unref();
      return worker;
    },
    gone: (message) => ({ ok: false, code: null, message }),
  });
  let turn: Promise<unknown> = Promise.resolve();
  return {
    async review(job) {
      const answering = turn.then(() => thread.run(job));
      turn = answering;
      const answer = await answering;
      if (answer.ok) return answer;
      throw answer.code === null
        ? new Error(answer.message)
        : new SessionError(answer.code, answer.message);
    },
    close: () => thread.close(),
  };
}
