import { promisify } from 'node:util';
import { pipeline } from 'node:stream/promises';
import { createGzip, gzip } from 'node:zlib';
import type { AnalysisResult } from '../../analysis/result.ts';
import { isCounted } from '../../coaching/asSaid.ts';
import { readAnalysis, readVersion } from '../../sessions/derivatives.ts';
import { requireCalibration } from '../../sessions/openSession.ts';
import { resultColumns } from '../../sessions/store/rows.ts';
import { VERSION } from '../../sessions/version.ts';
import { writeJson, writeWhole } from '../../sessions/write/wholeFile.ts';
import { analyseWithCurves } from '../../streaming/curvesInOnePass.ts';
import { CORRECTED } from '../../streaming/hubContract/review.ts';
import { overviewIn, withSession } from '../../streaming/reviewing.ts';
import type { RepetitionCurves } from '../../streaming/sessionsContract.ts';
import type { SessionPaths } from '../sessionPaths.ts';
import { differences } from './differences.ts';
import type { Job, JobAnswer, ResultColumns } from './jobMessages.ts';

const packed = promisify(gzip);

/**
 * Analyses the session as this version does, keeps what its pages show beside it, and tells its row.
 * @throws SessionError where the recording is why it cannot be analysed
 */
export async function analyse(job: Job): Promise<JobAnswer> {
  return withSession(job.paths.zip, async (session) => {
    requireCalibration(session);
    const labels = job.labels.map(({ topS, kind }) => ({ topS, kind: CORRECTED[kind] }));
    const { analysis, curves } = await analyseWithCurves(session, job.plan, labels);
    await keep(job.paths, { analysis, curves });
    const said = differences(analysis, await readAnalysis(session.files), {
      here: VERSION,
      there: await readVersion(session.files),
      labelled: labels.length > 0,
    });
    const warnings = analysis.warnings.map(({ id, atS, text }) => ({ warningId: id, atS, text }));
    return { ok: true, columns: columns(analysis, said), warnings };
  });
}

type Reviewed = Awaited<ReturnType<typeof analyseWithCurves>>;

/** One line each. They are packed one by one: all in one text would need as much memory as the whole analysis. */
async function packedLines(curves: Iterable<RepetitionCurves>): Promise<Buffer> {
  const pieces: Buffer[] = [];
  function* lines(): Generator<string> {
    for (const each of curves) yield `${JSON.stringify(each)}\n`;
  }
  await pipeline(lines, createGzip(), async (gzipped: AsyncIterable<Buffer>) => {
    for await (const piece of gzipped) pieces.push(piece);
  });
  return Buffer.concat(pieces);
}

/** The result last: with it, the rest is there. */
async function keep(paths: SessionPaths, review: Reviewed): Promise<void> {
  await writeWhole(paths.overview, await packed(JSON.stringify(overviewIn(review))));
  await writeWhole(paths.curves, await packedLines(review.curves));
  await writeJson(paths.analysis, review.analysis);
}

const columns = (analysis: AnalysisResult, said: readonly string[]): ResultColumns => ({
  ...resultColumns(analysis),
  version: VERSION,
  practiceSwings: analysis.repetitions.filter((r) => r.kind === 'practiceSwing' && isCounted(r))
    .length,
  warnings: analysis.warnings.length,
  carryOver: JSON.stringify(analysis.carryOver),
  differences: JSON.stringify(said),
});
