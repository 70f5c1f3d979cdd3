import { rm, rmdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { HubPlaces } from './db/open.ts';

/** Where one session lies: as it came, and what was computed of it. */
export interface SessionPaths {
  readonly folder: string;
  readonly zip: string;
  /** `AnalysisResult` of this hub. */
  readonly analysis: string;
  /** `SessionOverview`. */
  readonly overview: string;
  /** One line of JSON (`RepetitionCurves`) a repetition. */
  readonly curves: string;
}

export function sessionPaths(
  { students }: Pick<HubPlaces, 'students'>,
  studentId: string,
  sessionId: string,
): SessionPaths {
  const folder = join(students, studentId);
  const stem = join(folder, sessionId);
  return {
    folder,
    zip: `${stem}.zip`,
    analysis: `${stem}.analysis.json`,
    overview: `${stem}.overview.json.gz`,
    curves: `${stem}.curves.jsonl.gz`,
  };
}

/** The files of a session, and the student's folder where it was the last. The zip goes last: while it is there, the rest is found. */
export async function removeSessionFiles(paths: SessionPaths): Promise<void> {
  for (const path of [paths.analysis, paths.overview, paths.curves, paths.zip])
    await rm(path, { force: true });
  await rmdir(paths.folder).catch(() => undefined);
}
