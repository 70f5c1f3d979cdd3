import type { AnalysisResult } from '../analysis/result.ts';
import type { Plan } from '../coaching/plan.ts';
import { analyseSession } from '../sessions/analyseSession.ts';
import { readAnalysis } from '../sessions/derivatives.ts';
import { type RecordedSession, openSession, requireCalibration } from '../sessions/openSession.ts';
import { gatherCurves } from './reviewCurves.ts';
import type { RepetitionCurves } from './sessionsContract.ts';

/** What is computed of a session when its page is opened. */
export interface Review {
  readonly analysis: AnalysisResult;
  readonly curves: readonly RepetitionCurves[];
}

export interface Reviews {
  /** Runs the session through the analysis once; the next askers get the same. */
  of(id: string, folder: string, plan: Plan): Promise<Review>;
  forget(id: string): void;
}

/** Sessions whose curves are kept in memory: about 4 MB for 200 repetitions. */
const KEPT = 4;

export function sessionReviews(): Reviews {
  const known = new Map<string, Promise<Review>>();
  return {
    of(id, folder, plan) {
      const found = known.get(id) ?? review(folder, plan);
      known.delete(id);
      known.set(id, found);
      found.catch(() => known.delete(id));
      for (const oldest of known.keys()) if (known.size > KEPT) known.delete(oldest);
      return found;
    },
    forget: (id) => void known.delete(id),
  };
}

/** Opens a session, gives it to `work` and closes it in any case. */
export async function withSession<T>(
  folder: string,
  work: (session: RecordedSession) => Promise<T>,
): Promise<T> {
  const session = await openSession(folder);
  try {
    return await work(session);
  } finally {
    await session.close();
  }
}

/** The kept result where there is one, so that the curves belong to the very repetitions that are listed. */
const review = (folder: string, plan: Plan): Promise<Review> =>
  withSession(folder, async (session) => {
    requireCalibration(session);
    const kept = await readAnalysis(session.files);
    const analysis = kept ?? (await analyseSession(session, plan));
    const gatherer = gatherCurves(analysis.repetitions);
    await analyseSession(session, plan, {
      frames: true,
      emit: (output) => output.kind === 'frame' && gatherer.take(output),
    });
    return { analysis, curves: gatherer.curves() };
  });
