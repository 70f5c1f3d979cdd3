import type { AnalysisResult } from '../analysis/result.ts';
import type { Plan } from '../coaching/plan.ts';
import { analyseSession } from '../sessions/analyseSession.ts';
import { readAnalysis } from '../sessions/derivatives.ts';
import { type RecordedSession, openSession, requireCalibration } from '../sessions/openSession.ts';
import { type ReviewCache, stampOf } from './reviewCache.ts';
import { gatherCurves, overviewOf } from './reviewCurves.ts';
import type { RepetitionCurves, SessionOverview } from './sessionsContract.ts';

/** What is computed of a session when its page is opened. */
export interface Review {
  readonly analysis: AnalysisResult;
  readonly curves: readonly RepetitionCurves[];
}

/** A session that is reviewed: its id, where it lies, and the plan it is judged by. */
export interface Reviewed {
  readonly id: string;
  readonly folder: string;
  readonly plan: Plan;
}

export interface Reviews {
  /** Runs the session through the analysis once; the next askers get the same. */
  of(session: Reviewed): Promise<Review>;
  overview(session: Reviewed): Promise<SessionOverview>;
  /** `null` where the session has no such repetition. */
  curves(session: Reviewed, index: number): Promise<RepetitionCurves | null>;
  /** Has the answers ready before they are asked for, one session after the other; fulfilled in any case. */
  prepare(session: Reviewed): Promise<void>;
  forget(id: string): void;
}

/** Sessions whose curves stay in memory where the disk does not take them: about 10 MB for 200 repetitions. */
const KEPT = 2;

/** @param cache where answers outlive the program; `null`: in memory only */
export function sessionReviews(cache: ReviewCache | null): Reviews {
  const known = new Map<string, Promise<Review>>();
  let preparing: Promise<unknown> = Promise.resolve();
  const of = (session: Reviewed): Promise<Review> => {
    const { id } = session;
    const found = known.get(id) ?? review(session, cache, () => known.delete(id));
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
    overviewIn(await of(session));
  return {
    of,
    overview,
    curves: async (session, index) =>
      (await cached(session, (c, id, stamp) => c.curves(id, stamp, index))) ??
      (await of(session)).curves.find((c) => c.index === index) ??
      null,
    prepare: (session) => {
      const ready = preparing.then(() => overview(session));
      preparing = ready.catch(() => undefined);
      return preparing.then(() => undefined);
    },
    forget: (id) => {
      known.delete(id);
      void cache?.forget(id).catch(() => undefined);
    },
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

/** @param onDisk told when the answers outlive this program: they need no memory then */
async function review(
  reviewed: Reviewed,
  cache: ReviewCache | null,
  onDisk: () => void,
): Promise<Review> {
  const { id, folder } = reviewed;
  const stamp = cache && (await stampOf(folder));
  const found = await compute(reviewed);
  if (cache === null || stamp === null) return found;
  const kept = { overview: overviewIn(found), curves: found.curves };
  // A full disk is no reason to refuse the page.
  await cache.keep(id, stamp, kept).then(onDisk, () => undefined);
  return found;
}

/** The kept result where there is one, so that the curves belong to the very repetitions that are listed. */
const compute = ({ folder, plan }: Reviewed): Promise<Review> =>
  withSession(folder, async (session) => {
    requireCalibration(session);
    const kept = await readAnalysis(session.files);
    const analysis = kept ?? (await analyseSession(session, plan));
    return { analysis, curves: await curvesIn(session, plan, analysis) };
  });

/** The curves of the repetitions of `analysis`: the session runs through the analysis once more. */
export async function curvesIn(
  session: RecordedSession,
  plan: Plan,
  { repetitions }: Pick<AnalysisResult, 'repetitions'>,
): Promise<readonly RepetitionCurves[]> {
  const gatherer = gatherCurves(repetitions);
  await analyseSession(session, plan, {
    frames: true,
    emit: (output) => output.kind === 'frame' && gatherer.take(output),
  });
  return gatherer.curves();
}

/** The small multiples of a review. */
export function overviewIn({ analysis, curves }: Review): SessionOverview {
  const passed = new Map(
    analysis.repetitions.map((r) => [r.index, r.kind === 'rehearsal' ? r.verdict.passed : null]),
  );
  return { repetitions: curves.map((c) => overviewOf(c, passed.get(c.index) ?? null)) };
}
