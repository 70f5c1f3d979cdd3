import { stat } from 'node:fs/promises';
import type { Kysely } from 'kysely';
import type { AnalysisResult } from '../../analysis/result.ts';
import { DEFAULT_PLAN, type Plan } from '../../coaching/plan.ts';
import { analyseSession } from '../analyseSession.ts';
import { CLOCK_FITS_FILE, writeClockFits } from '../clockFits.ts';
import { readAnalysis, readPlan, writeAnalysis } from '../derivatives.ts';
import { type RecordedSession, openSession, requireCalibration } from '../openSession.ts';
import { NO_NOTES, type PracticeNotes, readNotes } from '../practiceNotes.ts';
import { SessionError } from '../sessionError.ts';
import { type Identity, newRow, resultColumns, saveDetails, saveRow } from './rows.ts';
import type { IndexTables } from './tables.ts';

/** A session's folder and what the index already knows of it. */
export interface Unindexed {
  readonly id: string;
  readonly folder: string;
  readonly deletedMs: number | null;
  /** Given where it is certain; else the folder tells. */
  readonly state?: Identity['state'];
  /** Kept where the folder has none. */
  readonly notes?: PracticeNotes;
}

interface Found {
  readonly identity: Identity;
  readonly analysis: AnalysisResult | null;
  readonly problem: string | null;
}

/** Reads a session's folder, analyses it where no result is kept, and puts it into the index. */
export async function indexSession(db: Kysely<IndexTables>, session: Unindexed): Promise<void> {
  const { identity, analysis, problem } = await look(session);
  const row = { ...newRow(identity), ...(analysis && resultColumns(analysis)), problem };
  await db.transaction().execute(async (transaction) => {
    await saveRow(transaction, row);
    if (analysis !== null) await saveDetails(transaction, session.id, analysis);
  });
}

async function look(session: Unindexed): Promise<Found> {
  const { id, folder, deletedMs } = session;
  const unknown: Identity = {
    id,
    name: 'Practice',
    subject: '',
    hand: 'right',
    simulated: false,
    startedMs: (await stat(folder)).mtimeMs,
    state: session.state ?? 'interrupted',
    deletedMs,
    plan: DEFAULT_PLAN,
    notes: session.notes ?? NO_NOTES,
  };
  const opened = await openSession(folder).catch(inWords);
  if (typeof opened === 'string') return { identity: unknown, analysis: null, problem: opened };
  try {
    return await lookInside(opened, session, unknown);
  } finally {
    await opened.close();
  }
}

async function lookInside(
  opened: RecordedSession,
  session: Unindexed,
  unknown: Identity,
): Promise<Found> {
  const { header, files } = opened;
  const notes = await readNotes(files);
  const plan = await readPlan(files).catch(() => DEFAULT_PLAN);
  const analysis = (await readAnalysis(files)) ?? (await analyse(opened, plan).catch(inWords));
  if (typeof analysis !== 'string') {
    await writeAnalysis(session.folder, analysis);
    if (!files.names.includes(CLOCK_FITS_FILE))
      await writeClockFits(session.folder, await opened.clockFits());
  }
  const startedMs = header.startedAt === null ? NaN : new Date(header.startedAt).getTime();
  const identity: Identity = {
    ...unknown,
    name: header.name || unknown.name,
    subject: header.subject,
    hand: header.hand,
    simulated: header.simulated,
    startedMs: Number.isFinite(startedMs) ? startedMs : unknown.startedMs,
    state: session.state ?? (notes === null ? 'interrupted' : 'complete'),
    plan,
    notes: notes ?? unknown.notes,
  };
  return typeof analysis === 'string'
    ? { identity, analysis: null, problem: analysis }
    : { identity, analysis, problem: null };
}

async function analyse(opened: RecordedSession, plan: Plan): Promise<AnalysisResult> {
  requireCalibration(opened);
  return analyseSession(opened, plan);
}

/** What a recording cannot be read for; anything else is thrown on. */
function inWords(error: unknown): string {
  if (error instanceof SessionError) return error.message;
  throw error;
}
