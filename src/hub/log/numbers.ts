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

/** From now on nobody can tell what the log's number of it stood for. */
export async function forget(db: Db, kind: LoggedKind, refs: readonly string[]): Promise<void> {
  for (const ref of refs)
    await db
      .updateTable('logged')
      .set({ ref: null })
      .where('kind', '=', kind)
      .where('ref', '=', ref)
      .execute();
}

/** The same for a student with sessions, computers and invitations, while they are still there; and where they acted from. */
export async function forgetStudent(db: Db, studentId: string): Promise<void> {
  const idsOf = async (table: 'session' | 'machine'): Promise<readonly string[]> =>
    (await db.selectFrom(table).select('id').where('studentId', '=', studentId).execute()).map(
      ({ id }) => id,
    );
  await forget(db, 'session', await idsOf('session'));
  await forget(db, 'machine', await idsOf('machine'));
  const invites = db.selectFrom('invite').select('id').where('personId', '=', studentId);
  await forget(
    db,
    'invite',
    (await invites.execute()).map(({ id }) => id),
  );
  const number = await numberOf(db, 'person', studentId);
  await db
    .deleteFrom('logAddress')
    .where('logId', 'in', db.selectFrom('log').select('id').where('byNumber', '=', number))
    .execute();
  await forget(db, 'person', [studentId]);
}
