import type { Db } from '../db/tables.ts';
import { append } from './chain.ts';
import { numberOf } from './numbers.ts';

/** An entry of the log until version 4 of the database, with names as text. */
export interface OldEntry {
  readonly atMs: number;
  readonly who: string | null;
  readonly act: string;
  readonly what: string;
  readonly address: string;
}

async function idOf(db: Db, name: string | null): Promise<string | null> {
  if (name === null) return null;
  const found = await db.selectFrom('person').select('id').where('name', '=', name).execute();
  return found.length === 1 ? (found[0]?.id ?? null) : null;
}

/** What can be told of an old text without keeping it. */
async function aboutOf(db: Db, what: string): Promise<Record<string, number>> {
  const session = /^session (\S+?)(?:, |$)/.exec(what)?.[1];
  const repetition = /, repetition (\d+)$/.exec(what)?.[1];
  const student = /^student (\S+?)(?:, |$)/.exec(what)?.[1];
  const isHere =
    student !== undefined &&
    (await db.selectFrom('person').select('id').where('id', '=', student).executeTakeFirst());
  const person = isHere ? student : await idOf(db, what);
  return {
    ...(session !== undefined && { session: await numberOf(db, 'session', session) }),
    ...(repetition !== undefined && { repetition: Number(repetition) }),
    ...(person !== null &&
      person !== undefined && { person: await numberOf(db, 'person', person) }),
  };
}

/** Takes over old entries, oldest first. Names that are nobody's any more, or more than one person's, are left out. */
export async function takeOver(db: Db, entries: readonly OldEntry[]): Promise<void> {
  for (const { atMs, who, act, what, address } of entries) {
    const by = await idOf(db, who);
    const id = await append(db, {
      atMs,
      byNumber: by === null ? null : await numberOf(db, 'person', by),
      act,
      about: JSON.stringify(await aboutOf(db, what)),
    });
    await db.insertInto('logAddress').values({ logId: id, address }).execute();
  }
}
