import { createHash } from 'node:crypto';
import type { Db } from '../db/tables.ts';

/** An entry without names: numbers of the log and codes. */
export interface Line {
  readonly atMs: number;
  readonly byNumber: number | null;
  readonly act: string;
  readonly about: string;
}

/** SHA-256, hex, of an entry and of the hash of the one before it. */
const hashOf = (before: string, { atMs, byNumber, act, about }: Line): string =>
  createHash('sha256')
    .update(JSON.stringify([before, atMs, byNumber, act, about]))
    .digest('hex');

/** Adds an entry that carries the hash of the one before; its id. To be done within a transaction. */
export async function append(db: Db, line: Line): Promise<number> {
  const last = await db
    .selectFrom('log')
    .select('hash')
    .orderBy('id', 'desc')
    .limit(1)
    .executeTakeFirst();
  const { id } = await db
    .insertInto('log')
    .values({ ...line, hash: hashOf(last?.hash ?? '', line) })
    .returning('id')
    .executeTakeFirstOrThrow();
  return id;
}

const PAGE = 1000;

/** The first entry that is not as it was written, or that follows a missing one; `null` where the log is whole. */
export async function firstBroken(db: Db): Promise<number | null> {
  let before = '';
  for (let after = 0; ;) {
    const page = await db
      .selectFrom('log')
      .selectAll()
      .where('id', '>', after)
      .orderBy('id')
      .limit(PAGE)
      .execute();
    for (const { id, hash, ...line } of page) {
      if (hashOf(before, line) !== hash || id !== after + 1) return id;
      before = hash;
      after = id;
    }
    if (page.length < PAGE) return null;
  }
}
