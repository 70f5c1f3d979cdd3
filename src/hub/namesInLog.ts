import { escaped } from '../sensors/sentence.ts';
import type { Db } from './db/open.ts';

const GONE = 'a deleted student';

const isShared = async (db: Db, name: string, exceptId: string): Promise<boolean> =>
  (await db
    .selectFrom('person')
    .select('id')
    .where('name', '=', name)
    .where('id', '!=', exceptId)
    .executeTakeFirst()) !== undefined;

async function replace(db: Db, words: readonly string[], by: string): Promise<void> {
  const pattern = new RegExp(
    `(?<![\\p{L}\\d])(?:${words.map(escaped).join('|')})(?![\\p{L}\\d])`,
    'gu',
  );
  const entries = await db.selectFrom('audit').select(['id', 'who', 'what', 'address']).execute();
  for (const { id, who, what, address } of entries) {
    const said = what.replace(pattern, () => by);
    const doer = who?.replace(pattern, () => by) ?? null;
    if (said === what && doer === who) continue;
    // where somebody who is forgotten was
    const from = by === GONE && doer !== who ? '' : address;
    const row = { what: said, who: doer, address: from };
    await db.updateTable('audit').set(row).where('id', '=', id).execute();
  }
}

/** Who somebody was before stands nowhere in the log: a later deletion then finds all of it. A name that somebody else has too stays. */
export async function renameInLog(
  db: Db,
  { id, from, to }: { readonly id: string; readonly from: string; readonly to: string },
): Promise<void> {
  if (from !== to && !(await isShared(db, from, id))) await replace(db, [from], to);
}

/** What was done stays in the log; whom it was done to does not. Where somebody else has the same name, the name stays. */
export async function forgetInLog(
  db: Db,
  {
    id,
    name,
    login,
  }: { readonly id: string; readonly name: string; readonly login: string | null },
): Promise<void> {
  await replace(db, (await isShared(db, name, id)) ? [id] : [name, id], GONE);
  if (login === null) return;
  await db
    .updateTable('audit')
    .set({ what: GONE, address: '' })
    .where('act', '=', 'login-failed')
    .where('what', '=', login)
    .execute();
}
