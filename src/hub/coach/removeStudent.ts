import { readdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { sql } from 'kysely';
import type { HubContext } from '../context.ts';
import { forgetStudent } from '../log/numbers.ts';

/**
 * Deletes a student for good: account, machines, sessions with recordings and films, plans, comments, uploads under way,
 * invitations, and the name in the club's log. The database is packed anew, so that no page of it still holds them.
 */
export async function removeStudent(
  { db, places }: HubContext,
  student: { readonly id: string; readonly name: string },
): Promise<void> {
  const { id: studentId, name } = student;
  const clips = await db
    .selectFrom('clip')
    .innerJoin('session', 'session.id', 'clip.sessionId')
    .select('clip.id')
    .where('session.studentId', '=', studentId)
    .execute();
  await db.transaction().execute(async (transaction) => {
    await forgetStudent(transaction, studentId);
    await transaction.deleteFrom('person').where('id', '=', studentId).execute();
    await transaction
      .deleteFrom('invite')
      .where('name', '=', name)
      .where('usedMs', 'is not', null)
      .execute();
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
