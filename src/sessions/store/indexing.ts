import { stat } from 'node:fs/promises';
import type { Kysely } from 'kysely';
import type { AnalysisResult } from '../../analysis/result.ts';
import { DEFAULT_PLAN, type Plan } from '../../coaching/plan.ts';
import { analyseSession } from '../analyseSession.ts';
import { CLOCK_FITS_FILE, type ClockFits, writeClockFits } from '../clockFits.ts';
import { readAnalysis, readPlan, writeAnalysis } from '../derivatives.ts';
import { type RecordedSession, openSession, requireCalibration } from '../openSession.ts';
import { NO_NOTES, type PracticeNotes, readNotes } from '../practiceNotes.ts';
import { SessionError } from '../sessionError.ts';
import { type Db, type Identity, newRow, resultColumns, saveDetails, saveRow } from './rows.ts';
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

interface Fresh {
  readonly analysis?: AnalysisResult;
  readonly clockFits?: ClockFits;
}

/** What a session's folder holds. */
export interface Found {
  readonly identity: Identity;
  readonly analysis: AnalysisResult | null;
  /** What was computed just now and does not lie in the folder yet. */
  readonly fresh: Fresh;
  readonly problem: string | null;
}

/** Puts into the index what was found in the folder of a session that has no row yet. */
export async function enterNew(
  db: Kysely<IndexTables>,
  folder: string,
  found: Found,
): Promise<void> {
  await keepFresh(folder, found);
  await db.transaction().execute((transaction) => enter(transaction, found));
}

/**
 * Puts into the index what was found of a session that waited for it. What has been said of it meanwhile stays.
 * @returns false where it has been moved or deleted meanwhile: it waits on, or is gone.
 */
export async function enterWaiting(
  db: Kysely<IndexTables>,
  session: Unindexed,
  found: Found,
): Promise<boolean> {
  if ((await standing(db, session)) === undefined) return false;
  await keepFresh(session.folder, found);
  return db.transaction().execute(async (transaction) => {
    const row = await standing(transaction, session);
    if (row === undefined) return false;
    const { notes } = found.identity;
    const said = {
      painBefore: row.painBefore ?? notes.painBefore,
      painAfter: row.painAfter ?? notes.painAfter,
      note: row.note || notes.note,
    };
    await enter(transaction, { ...found, identity: { ...found.identity, notes: said } });
    return true;
  });
}

/** The row of a session that lies where it lay. */
async function standing(db: Db, { id, deletedMs }: Unindexed) {
  const row = await db
    .selectFrom('session')
    .select(['deletedMs', 'painBefore', 'painAfter', 'note'])
    .where('id', '=', id)
    .executeTakeFirst();
  return row?.deletedMs === deletedMs ? row : undefined;
}

async function keepFresh(folder: string, { fresh }: Found): Promise<void> {
  if (fresh.analysis !== undefined) await writeAnalysis(folder, fresh.analysis);
  if (fresh.clockFits !== undefined) await writeClockFits(folder, fresh.clockFits);
}

async function enter(db: Db, { identity, analysis, problem }: Found): Promise<void> {
  await saveRow(db, { ...newRow(identity), ...(analysis && resultColumns(analysis)), problem });
  if (analysis !== null) await saveDetails(db, identity.id, analysis);
}

/** Reads a session's folder and analyses it where no result is kept. Nothing is written. */
export async function look(session: Unindexed): Promise<Found> {
  const { id, folder, deletedMs } = session;
  const identity: Identity = {
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
  if (typeof opened === 'string') return { identity, analysis: null, fresh: {}, problem: opened };
  try {
    return await lookInside(opened, session, identity);
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
  const kept = await readAnalysis(files);
  const analysis = kept ?? (await analyse(opened, plan).catch(inWords));
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
  if (typeof analysis === 'string')
    return { identity, analysis: null, fresh: {}, problem: analysis };
  const fresh: Fresh = {
    ...(kept === null && { analysis }),
    ...(!files.names.includes(CLOCK_FITS_FILE) && { clockFits: await opened.clockFits() }),
  };
  return { identity, analysis, fresh, problem: null };
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
