import type { AnalysisResult } from '../analysis/result.ts';
import { type ReviewCache, stampOf } from './reviewCache.ts';
import { type ReviewDone, type ReviewThread, reviewThread } from './reviewThread.ts';
import type { Reviewed } from './reviewing.ts';
import type { RepetitionCurves, SessionOverview } from './sessionsContract.ts';

export interface Reviews {
  /** Runs the session through the analysis once; the next askers get the same. */
  analysis(session: Reviewed): Promise<AnalysisResult>;
  overview(session: Reviewed): Promise<SessionOverview>;
  /** `null` where the session has no such repetition. */
  curves(session: Reviewed, index: number): Promise<RepetitionCurves | null>;
  /** Has the answers ready before they are asked for, one session after the other; fulfilled in any case. */
  prepare(session: Reviewed): Promise<void>;
  forget(id: string): void;
  close(): Promise<void>;
}

/** Sessions whose curves stay in memory where the disk does not take them: about 10 MB for 200 repetitions. */
const KEPT = 2;

/** @param cache where answers outlive the program; `null`: in memory only */
export function sessionReviews(
  cache: ReviewCache | null,
  thread: ReviewThread = reviewThread(),
): Reviews {
  const known = new Map<string, Promise<ReviewDone>>();
  let preparing: Promise<unknown> = Promise.resolve();
  const begin = async (session: Reviewed): Promise<ReviewDone> => {
    const done = await thread.review({ reviewed: session, cache: cache?.root ?? null });
    // What is on the disk needs no memory.
    if (done.curves === null) known.delete(session.id);
    return done;
  };
  const of = (session: Reviewed): Promise<ReviewDone> => {
    const { id } = session;
    const found = known.get(id) ?? begin(session);
    known.delete(id);
    known.set(id, found);
    found.catch(() => known.delete(id));
    for (const oldest of known.keys()) if (known.size > KEPT) known.delete(oldest);
    return found;
  };
  const cached = async <T>(
    { id, folder }: Reviewed,
    read: (cache: ReviewCache, id: string, stamp: string) => Promise<T | null>,
  ): Promise<T | null> => {
    if (cache === null || known.has(id)) return null;
    const stamp = await stampOf(folder);
    return stamp === null ? null : read(cache, id, stamp);
  };
  const overview = async (session: Reviewed): Promise<SessionOverview> =>
    (await cached(session, (c, id, stamp) => c.overview(id, stamp))) ??
    (await of(session)).overview;
  const curvesOf = (session: Reviewed, index: number): Promise<RepetitionCurves | null> =>
    cached(session, (c, id, stamp) => c.curves(id, stamp, index));
  return {
    analysis: async (session) => (await of(session)).analysis,
    overview,
    async curves(session, index) {
      const found = await curvesOf(session, index);
      if (found !== null) return found;
      const { curves } = await of(session);
      if (curves === null) return curvesOf(session, index);
      return curves.find((c) => c.index === index) ?? null;
    },
    prepare: (session) => {
      const ready = preparing.then(() => overview(session));
      preparing = ready.catch(() => undefined);
      return preparing.then(() => undefined);
    },
    forget: (id) => {
      known.delete(id);
      void cache?.forget(id).catch(() => undefined);
    },
    close: () => thread.close(),
  };
}
