import { rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { Kysely } from 'kysely';
import type { AnalysisResult } from '../../analysis/result.ts';
import type { SessionEvent } from '../../sensors/sessionEvent.ts';
import { writeAnalysis } from '../derivatives.ts';
import { type PracticeNotes, checkNotes, writeNotes } from '../practiceNotes.ts';
import { SessionError } from '../sessionError.ts';
import { appendEvent } from '../write/eventsFile.ts';
import { zipSession } from '../write/zipSession.ts';
import { lock } from './lock.ts';
import { type Places, checkedId, makePlaces, newId } from './places.ts';
import { type SessionReading, readingThread } from './reading.ts';
import { openIndex, reconcile } from './recover.ts';
import { type NewRecording, type Recording, startRecording } from './recording.ts';
import {
  type SessionSummary,
  type StoredSession,
  loadSession,
  resultColumns,
  saveDetails,
  summaryOf,
} from './rows.ts';
import type { IndexTables } from './tables.ts';
import { type Taking, sessionTaking } from './taking.ts';

/** The sessions of one data folder and their index. One process at a time. */
export interface SessionStore {
  readonly places: Places;
  /** In words, what was put right while opening; empty where nothing was. */
  readonly repaired: readonly string[];
  /** Starts a recording. @throws SessionError where the disk refuses. */
  begin(recording: NewRecording): Promise<Recording>;
  /** Newest first; deleted ones only where asked for. */
  list(options?: { readonly deleted?: boolean }): Promise<readonly SessionSummary[]>;
  get(id: string): Promise<StoredSession | null>;
  /**
   * Analyses what an interruption left unanalysed; tells each session that is done, with why it cannot be measured.
   * One whose analysis breaks off says so in its `problem` and is tried again by the next program.
   */
  recover(done?: (id: string, problem: string | null) => void): Promise<void>;
  annotate(id: string, notes: Partial<PracticeNotes>): Promise<void>;
  /** Adds what was said of a session after its end, with the result that takes it in. */
  tellLater(id: string, event: SessionEvent, analysis: AnalysisResult): Promise<void>;
  remove(id: string): Promise<void>;
  /** Takes a `remove` back. */
  restore(id: string): Promise<void>;
  /** Deletes for good what was removed before `beforeMs` (epoch). */
  purge(beforeMs: number): Promise<void>;
  /** Deletes a session for good, at once; its writer must be closed. */
  discard(id: string): Promise<void>;
  /**
   * Takes in a session zip or folder from elsewhere, whole or not at all.
   * @throws SessionError `exists` where it is here already, `broke-off` where the analysis ended on the way.
   */
  importSession(path: string): Promise<string>;
  exportZip(id: string, out: string): Promise<void>;
  /** Folder of a session in the recording format. */
  folderOf(id: string): string;
  close(): Promise<void>;
}

export interface StoreOptions {
  readonly now?: () => Date;
  /** 0..1, for ids. */
  readonly chance?: () => number;
  /** How recordings are read; left out: in a thread of its own. */
  readonly reading?: SessionReading;
}

/** @throws SessionError where the folder is in use, cannot be written, or was written by a newer version. */
export async function openStore(root: string, options: StoreOptions = {}): Promise<SessionStore> {
  const { now = () => new Date(), chance = Math.random } = options;
  const places = await makePlaces(root);
  const unlock = await lock(places.lock);
  const { db, repaired } = await openReconciled(places, now()).catch(async (error: unknown) => {
    await unlock();
    throw error;
  });
  const taking = sessionTaking(db, places, options.reading ?? readingThread());
  const folderOf = (id: string): string => join(places.sessions, checkedId(id));
  return {
    places,
    repaired,
    folderOf,
    begin: (recording) =>
      startRecording(db, places.sessions, newId(recording.startedAt, chance()), recording),
    list: async ({ deleted = false } = {}) =>
      (await list(db, deleted)).map((session) => asItStands(taking, session)),
    get: async (id) => {
      const session = await loadSession(db, checkedId(id));
      return session && asItStands(taking, session);
    },
    recover: taking.recover,
    annotate: (id, notes) => annotate(db, folderOf(id), id, notes),
    tellLater: (id, event, analysis) => tellLater(db, folderOf(id), id, event, analysis),
    remove: (id) => move(db, places, checkedId(id), now()),
    restore: (id) => move(db, places, checkedId(id), null),
    purge: (beforeMs) => purge(db, places, beforeMs),
    discard: (id) => discard(db, places, checkedId(id)),
    importSession: taking.importSession,
    exportZip: async (id, out) => {
      await existing(db, checkedId(id));
      await zipSession(folderOf(id), out);
    },
    async close() {
      await taking.close();
      await db.destroy();
      await unlock();
    },
  };
}

async function openReconciled(places: Places, now: Date) {
  const opened = await openIndex(places, now);
  await reconcile(opened.db, places, now).catch(async (error: unknown) => {
    await opened.db.destroy();
    throw error;
  });
  return opened;
}

type Index = Kysely<IndexTables>;

async function list(db: Index, deleted: boolean): Promise<readonly SessionSummary[]> {
  const rows = await db
    .selectFrom('session')
    .selectAll()
    .where('deletedMs', deleted ? 'is not' : 'is', null)
    .orderBy('startedMs', 'desc')
    .execute();
  const swings = await db
    .selectFrom('repetition')
    .select(['sessionId', (eb) => eb.fn.countAll<number>().as('count')])
    .where('kind', '=', 'practiceSwing')
    .groupBy('sessionId')
    .execute();
  const warnings = await db
    .selectFrom('warning')
    .select(['sessionId', (eb) => eb.fn.countAll<number>().as('count')])
    .groupBy('sessionId')
    .execute();
  const [swingsOf, warningsOf] = [swings, warnings].map(
    (counted) => new Map(counted.map((c) => [c.sessionId, c.count])),
  );
  return rows.map((row) =>
    summaryOf(row, {
      practiceSwings: swingsOf?.get(row.id) ?? 0,
      warningCount: warningsOf?.get(row.id) ?? 0,
    }),
  );
}

async function existing(db: Index, id: string) {
  const row = await db.selectFrom('session').selectAll().where('id', '=', id).executeTakeFirst();
  if (row === undefined) throw new SessionError('not-found', 'session not found');
  return row;
}

/** With why its analysis broke off, which is not written down. */
const asItStands = <S extends SessionSummary>(taking: Taking, session: S): S => ({
  ...session,
  problem: session.problem ?? taking.brokeOff(session.id),
});

async function annotate(
  db: Index,
  folder: string,
  id: string,
  notes: Partial<PracticeNotes>,
): Promise<void> {
  checkNotes(notes);
  const { painBefore, painAfter, note, state } = await existing(db, id);
  const all = { painBefore, painAfter, note, ...notes };
  // its notes beside a session say that it came to its end
  if (state === 'complete') await writeNotes(folder, all);
  await db.updateTable('session').set(all).where('id', '=', id).execute();
}

async function tellLater(
  db: Index,
  folder: string,
  id: string,
  event: SessionEvent,
  analysis: AnalysisResult,
): Promise<void> {
  await existing(db, id);
  await appendEvent(folder, event);
  await writeAnalysis(folder, analysis);
  await db.transaction().execute(async (transaction) => {
    await transaction
      .updateTable('session')
      .set(resultColumns(analysis))
      .where('id', '=', id)
      .execute();
    await saveDetails(transaction, id, analysis);
  });
}

/** The folder first: where it lies decides, should the power go in between. */
async function move(db: Index, places: Places, id: string, deletedAt: Date | null): Promise<void> {
  const { state, deletedMs } = await existing(db, id);
  if (state === 'running') throw new SessionError('in-use', 'the session is being recorded');
  if ((deletedMs === null) === (deletedAt === null)) return;
  const [from, to] =
    deletedAt === null ? [places.deleted, places.sessions] : [places.sessions, places.deleted];
  await rename(join(from, id), join(to, id));
  await db
    .updateTable('session')
    .set({ deletedMs: deletedAt?.getTime() ?? null })
    .where('id', '=', id)
    .execute();
}

async function discard(db: Index, places: Places, id: string): Promise<void> {
  await rm(join(places.sessions, id), { recursive: true, force: true });
  await destroy(db, places, id);
}

async function destroy(db: Index, places: Places, id: string): Promise<void> {
  await rm(join(places.deleted, id), { recursive: true, force: true });
  await db.deleteFrom('session').where('id', '=', id).execute();
}

async function purge(db: Index, places: Places, beforeMs: number): Promise<void> {
  const old = await db
    .selectFrom('session')
    .select('id')
    .where('deletedMs', '<', beforeMs)
    .execute();
  for (const { id } of old) await destroy(db, places, id);
}
