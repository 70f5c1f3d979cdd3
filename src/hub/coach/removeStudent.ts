import { readdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { sql } from 'kysely';
import type { HubContext } from '../context.ts';
import type { Db } from '../db/open.ts';

/**
 * Deletes a student for good: account, machines, sessions with recordings and films, plans, comments, uploads under way,
 * invitations, and the name in the club's log. The database is packed anew, so that no page of it still holds them.
 */
export async function removeStudent(
  { db, places }: HubContext,
  studentId: string,
  name: string,
): Promise<void> {
  const clips = await db
    .selectFrom('clip')
    .innerJoin('session', 'session.id', 'clip.sessionId')
    .select('clip.id')
    .where('session.studentId', '=', studentId)
    .execute();
  await db.transaction().execute(async (transaction) => {
    await transaction.deleteFrom('person').where('id', '=', studentId).execute();
    await transaction
      .deleteFrom('invite')
      .where('name', '=', name)
      .where('usedMs', 'is not', null)
      .execute();
    await forgetInLog(transaction, studentId, name);
  });
  await rm(join(places.students, studentId), { recursive: true, force: true });
  await removeStartingWith(places.uploads, [studentId]);
  await removeStartingWith(
    places.clips,
    clips.map(({ id }) => id),
  );
  await sql`vacuum`.execute(db);
  await sql`pragma wal_checkpoint(truncate)`.execute(db);
}

async function removeStartingWith(folder: string, starts: readonly string[]): Promise<void> {
  const names = await readdir(folder);
  for (const name of names.filter((n) => starts.some((start) => n.startsWith(start))))
    await rm(join(folder, name), { recursive: true, force: true });
}

const GONE = 'a deleted student';

/** What was done stays in the log; whom it was done to does not. Where somebody else has the same name, the name stays. */
async function forgetInLog(db: Db, studentId: string, name: string): Promise<void> {
  const others = await db.selectFrom('person').select('id').where('name', '=', name).execute();
  const words = (others.length === 0 ? [name, studentId] : [studentId]).map(escaped);
  const pattern = new RegExp(`(?<![\\p{L}\\d])(?:${words.join('|')})(?![\\p{L}\\d])`, 'gu');
  const entries = await db.selectFrom('audit').select(['id', 'who', 'what']).execute();
  for (const { id, who, what } of entries) {
    const said = what.replace(pattern, GONE);
    const by = who === null ? null : who.replace(pattern, GONE);
    if (said === what && by === who) continue;
    await db.updateTable('audit').set({ what: said, who: by }).where('id', '=', id).execute();
  }
}

const escaped = (text: string): string => text.replaceAll(/[\\^$.*+?()[\]{}|/-]/g, '\\$&');
