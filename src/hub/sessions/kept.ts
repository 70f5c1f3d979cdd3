import { readFile } from 'node:fs/promises';
import { promisify } from 'node:util';
import { gunzip } from 'node:zlib';
import type { AnalysisResult } from '../../analysis/result.ts';
import { Refused } from '../../streaming/apiErrors.ts';
import type { HubContext } from '../context.ts';
import type { SessionTable } from '../db/tables.ts';
import { type SessionPaths, sessionPaths } from '../sessionPaths.ts';

const unpacked = promisify(gunzip);

/** A session of the hub and where its files lie. */
export interface HubKept {
  readonly row: Pick<SessionTable, 'id' | 'studentId' | 'analysed' | 'problem' | 'name'>;
  readonly paths: SessionPaths;
}

export async function keptSession({ db, places }: HubContext, id: string): Promise<HubKept> {
  const row = await db
    .selectFrom('session')
    .select(['id', 'studentId', 'analysed', 'problem', 'name'])
    .where('id', '=', id)
    .executeTakeFirst();
  if (row === undefined) throw new Refused(404, 'not-found', 'Session not found.');
  return { row, paths: sessionPaths(places, row.studentId, row.id) };
}

function refuseUnanalysed({ analysed, problem }: HubKept['row']): void {
  if (analysed === 1) return;
  throw new Refused(
    409,
    'not-analysed',
    problem ?? 'This session just arrived and is being analysed. Try again in a moment.',
  );
}

/** What was computed of it; it is remade by the next analysis where the file is gone. */
async function computed(kept: HubKept, name: 'analysis' | 'overview' | 'curves'): Promise<Buffer> {
  refuseUnanalysed(kept.row);
  return readFile(kept.paths[name]).catch(() => {
    throw new Refused(409, 'not-analysed', 'This session must be analysed again first.');
  });
}

export const analysisIn = async (kept: HubKept): Promise<AnalysisResult> =>
  JSON.parse((await computed(kept, 'analysis')).toString()) as AnalysisResult;

/** JSON of `SessionOverview`, packed with gzip. */
export const overviewIn = (kept: HubKept): Promise<Buffer> => computed(kept, 'overview');

/** JSON of one repetition's `RepetitionCurves`: found as text, nothing of the rest is parsed. */
export async function curvesIn(kept: HubKept, index: number): Promise<Buffer | null> {
  const lines = await unpacked(await computed(kept, 'curves'));
  const start = Buffer.from(`{"index":${index},`);
  let from = 0;
  while (from < lines.length) {
    const end = lines.indexOf(0x0a, from);
    if (lines.subarray(from, from + start.length).equals(start)) return lines.subarray(from, end);
    if (end < 0) return null;
    from = end + 1;
  }
  return null;
}
