import { rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { Kysely } from 'kysely';
import type { AnalysisResult } from '../../analysis/result.ts';
import type { SessionEvent } from '../../sensors/sessionEvent.ts';
import { writeAnalysis } from '../derivatives.ts';
import { unpackSession } from '../files/unpack.ts';
import { type PracticeNotes, checkNotes, writeNotes } from '../practiceNotes.ts';
import { SessionError } from '../sessionError.ts';
import { appendEvent } from '../write/sessionWriter.ts';
import { zipSession } from '../write/zipSession.ts';
import { contentId } from './contentId.ts';
import { indexSession } from './indexing.ts';
import { lock } from './lock.ts';
import { type Places, checkedId, makePlaces, newId } from './places.ts';
import { openIndex, reconcile } from './recover.ts';
import { type NewRecording, type Recording, startRecording } from './recording.ts';
import {
  type SessionSummary,
  type StoredSession,
  loadSession,
  saveDetails,
  summaryOf,
} from './rows.ts';
import type { IndexTables } from './tables.ts';

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
  /** Analyses what an interruption left unanalysed; tells each session that is done. */
  recover(done?: (id: string) => void): Promise<void>;
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
  /** Takes in a session zip or folder from elsewhere. @throws SessionError `exists` where it is here already. */
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
  const folderOf = (id: string): string => join(places.sessions, checkedId(id));
  return {
    places,
    repaired,
    folderOf,
    begin: (recording) =>
      startRecording(db, places.sessions, newId(recording.startedAt, chance()), recording),
    list: ({ deleted = false } = {}) => list(db, deleted),
    get: (id) => loadSession(db, checkedId(id)),
    recover: (done) => recover(db, places, done),
    annotate: (id, notes) => annotate(db, folderOf(id), id, notes),
    tellLater: (id, event, analysis) => tellLater(db, folderOf(id), id, event, analysis),
    remove: (id) => move(db, places, checkedId(id), now()),
    restore: (id) => move(db, places, checkedId(id), null),
    purge: (beforeMs) => purge(db, places, beforeMs),
    discard: (id) => discard(db, places, checkedId(id)),
    importSession: (path) => importSession(db, places, path),
    exportZip: async (id, out) => {
      await existing(db, checkedId(id));
      await zipSession(folderOf(id), out);
    },
    async close() {
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
  if (row === undefined) throw new SessionError('not-found', 'there is no such session');
  return row;
}

async function recover(db: Index, places: Places, done?: (id: string) => void): Promise<void> {
  const waiting = await db
    .selectFrom('session')
    .select(['id', 'state', 'deletedMs', 'painBefore', 'painAfter', 'note'])
    .where('analysed', '=', 0)
    .where('problem', 'is', null)
    .where('state', '!=', 'running')
    .execute();
  for (const { id, state, deletedMs, ...notes } of waiting) {
    const folder = join(deletedMs === null ? places.sessions : places.deleted, id);
    const known = state === 'unread' ? {} : { state, notes };
    await indexSession(db, { id, folder, deletedMs, ...known });
    done?.(id);
  }
}

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
  await db.transaction().execute((transaction) => saveDetails(transaction, id, analysis));
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

async function importSession(db: Index, places: Places, path: string): Promise<string> {
  const id = await contentId(path);
  const there = await db.selectFrom('session').select('id').where('id', '=', id).executeTakeFirst();
  if (there !== undefined)
    throw new SessionError('exists', 'this session is here already (perhaps among the deleted)');
  const folder = join(places.sessions, id);
  await unpackSession(path, folder);
  await indexSession(db, { id, folder, deletedMs: null, state: 'complete' });
  return id;
}
