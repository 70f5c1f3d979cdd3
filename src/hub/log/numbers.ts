import type { Db } from '../db/tables.ts';

export type LoggedKind = 'person' | 'session' | 'machine' | 'invite';

/** The number that the log has for a person or a thing: given at its first entry, kept for good. */
export async function numberOf(db: Db, kind: LoggedKind, ref: string): Promise<number> {
  const known = await db
    .selectFrom('logged')
    .select('number')
    .where('kind', '=', kind)
    .where('ref', '=', ref)
    .executeTakeFirst();
  if (known !== undefined) return known.number;
  const person =
    kind === 'person'
      ? await db.selectFrom('person').select('role').where('id', '=', ref).executeTakeFirst()
      : undefined;
  const { number } = await db
    .insertInto('logged')
    .values({ kind, ref, role: person?.role ?? null })
    .returning('number')
    .executeTakeFirstOrThrow();
  return number;
}

const nameless = (db: Db, kind: LoggedKind) =>
  db.updateTable('logged').set({ ref: null }).where('kind', '=', kind);

/** From now on nobody can tell what the log's number of it stood for. */
export async function forget(db: Db, kind: LoggedKind, ref: string): Promise<void> {
  await nameless(db, kind).where('ref', '=', ref).execute();
}

/** The same for a student with sessions, computers and invitations, while they are still there; and where they acted from. */
export async function forgetStudent(db: Db, studentId: string): Promise<void> {
  for (const kind of ['session', 'machine'] as const) {
    const own = db.selectFrom(kind).select('id').where('studentId', '=', studentId);
    await nameless(db, kind).where('ref', 'in', own).execute();
  }
  const invites = db.selectFrom('invite').select('id').where('personId', '=', studentId);
  await nameless(db, 'invite').where('ref', 'in', invites).execute();
  const number = await numberOf(db, 'person', studentId);
  await db
    .deleteFrom('logAddress')
    .where('logId', 'in', db.selectFrom('log').select('id').where('byNumber', '=', number))
    .execute();
  await forget(db, 'person', studentId);
}
