import type { AnalysisResult } from '../analysis/result.ts';
import type { Plan } from '../coaching/plan.ts';
import { analyseSession } from '../sessions/analyseSession.ts';
import { readAnalysis } from '../sessions/derivatives.ts';
import { type RecordedSession, openSession, requireCalibration } from '../sessions/openSession.ts';
import { analyseWithCurves } from './curvesInOnePass.ts';
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
export const compute = ({ folder, plan }: Reviewed): Promise<Review> =>
  withSession(folder, async (session) => {
    requireCalibration(session);
    const kept = await readAnalysis(session.files);
    if (kept === null) {
      const { analysis, curves } = await analyseWithCurves(session, plan);
      return { analysis, curves: [...curves] };
    }
    return { analysis: kept, curves: await curvesIn(session, plan, kept) };
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
export function overviewIn({
  analysis,
  curves,
}: {
  readonly analysis: AnalysisResult;
  readonly curves: Iterable<RepetitionCurves>;
}): SessionOverview {
  const passed = new Map(
    analysis.repetitions.map((r) => [r.index, r.kind === 'rehearsal' ? r.verdict.passed : null]),
  );
  return { repetitions: Array.from(curves, (c) => overviewOf(c, passed.get(c.index) ?? null)) };
}
