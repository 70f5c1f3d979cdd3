import { promisify } from 'node:util';
import { gzip } from 'node:zlib';
import type { AnalysisResult } from '../../analysis/result.ts';
import { isCounted } from '../../coaching/asSaid.ts';
import { readAnalysis, readVersion } from '../../sessions/derivatives.ts';
import { requireCalibration } from '../../sessions/openSession.ts';
import { SessionError } from '../../sessions/sessionError.ts';
import { resultColumns } from '../../sessions/store/rows.ts';
import { VERSION } from '../../sessions/version.ts';
import { writeJson, writeWhole } from '../../sessions/write/wholeFile.ts';
import { sentence } from '../../streaming/apiErrors.ts';
import { analyseWithCurves } from '../../streaming/curvesInOnePass.ts';
import { CORRECTED } from '../../streaming/hubContract/review.ts';
import { type Review, overviewIn, withSession } from '../../streaming/reviewing.ts';
import type { SessionPaths } from '../sessionPaths.ts';
import { differences } from './differences.ts';
import type { Job, JobAnswer, ResultColumns } from './jobMessages.ts';

const packed = promisify(gzip);

/** Analyses the session as this version does, keeps what its pages show beside it, and tells its row. */
export async function analyse(job: Job): Promise<JobAnswer> {
  try {
    return await withSession(job.paths.zip, async (session) => {
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
  } catch (error) {
    if (!(error instanceof SessionError)) throw error;
    return { ok: false, problem: sentence(error.message), lasting: error.code !== 'write-failed' };
  }
}

/** The result last: with it, the rest is there. */
async function keep(paths: SessionPaths, review: Review): Promise<void> {
  const lines = review.curves.map((c) => `${JSON.stringify(c)}\n`).join('');
  await writeWhole(paths.overview, await packed(JSON.stringify(overviewIn(review))));
  await writeWhole(paths.curves, await packed(lines));
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
