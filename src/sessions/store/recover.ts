import { readdir, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { Kysely } from 'kysely';
import { DEFAULT_PLAN } from '../../coaching/plan.ts';
import { NO_NOTES } from '../practiceNotes.ts';
import { SessionError } from '../sessionError.ts';
import { openDatabase } from './driver.ts';
import { migrate } from './migrations.ts';
import { type Places, idsIn } from './places.ts';
import { newRow, saveRow } from './rows.ts';
import type { IndexTables } from './tables.ts';

type Index = Kysely<IndexTables>;

/** Opens the index; a damaged one is set aside and made anew, since all it holds lies in the sessions' folders. */
export async function openIndex(
  places: Places,
  now: Date,
): Promise<{ db: Index; repaired: readonly string[] }> {
  try {
    return { db: await openMigrated(places.index), repaired: [] };
  } catch (error) {
    if (!(error instanceof SessionError) || error.code !== 'index-damaged') throw error;
    const aside = `${places.index}.damaged-${now.getTime()}`;
    await rename(places.index, aside);
    for (const part of ['-wal', '-shm']) await rm(places.index + part, { force: true });
    const words = `The session index was damaged. It was rebuilt from the sessions; the old one is saved as ${aside}.`;
    return { db: await openMigrated(places.index), repaired: [words] };
  }
}

async function openMigrated(path: string): Promise<Index> {
  const db = openDatabase<IndexTables>(path);
  try {
    await migrate(db);
    return db;
  } catch (error) {
    await db.destroy();
    throw error;
  }
}

/**
 * Makes the index agree with the folders: what was running is interrupted, what has no folder is
 * forgotten, what has no row gets one to be filled by the recovery.
 */
export async function reconcile(db: Index, places: Places, now: Date): Promise<void> {
  await db
    .updateTable('session')
    .set({ state: 'interrupted' })
    .where('state', '=', 'running')
    .execute();
  const kept = new Set(await idsIn(places.sessions));
  const deleted = new Set(await idsIn(places.deleted));
  const rows = await db.selectFrom('session').select(['id', 'deletedMs']).execute();
  for (const { id, deletedMs } of rows) {
    const lies = kept.has(id) ? 'kept' : deleted.has(id) ? 'deleted' : 'nowhere';
    if (lies === 'nowhere') await db.deleteFrom('session').where('id', '=', id).execute();
    else if ((lies === 'deleted') !== (deletedMs !== null))
      await setDeleted(db, id, lies === 'deleted' ? now.getTime() : null);
  }
  const known = new Set(rows.map((row) => row.id));
  for (const id of kept) if (!known.has(id)) await addUnread(db, id, null, now);
  for (const id of deleted) if (!known.has(id)) await addUnread(db, id, now.getTime(), now);
  await removeHalves(places);
}

const setDeleted = (db: Index, id: string, deletedMs: number | null) =>
  db.updateTable('session').set({ deletedMs }).where('id', '=', id).execute();

const addUnread = (db: Index, id: string, deletedMs: number | null, now: Date) =>
  saveRow(
    db,
    newRow({
      id,
      name: 'Practice',
      subject: '',
      hand: 'right',
      simulated: false,
      startedMs: now.getTime(),
      state: 'unread',
      deletedMs,
      plan: DEFAULT_PLAN,
      notes: NO_NOTES,
    }),
  );

/** Imports that were cut off. */
async function removeHalves(places: Places): Promise<void> {
  for (const name of await readdir(places.sessions))
    if (name.endsWith('.part'))
      await rm(join(places.sessions, name), { recursive: true, force: true });
}
