import type { Db } from '../db/open.ts';
import type { Actor } from './access.ts';
import { hashOf, newToken } from '../../streaming/secrets.ts';

/** Signed in for so long, and for so long without being seen, ms. Choices. */
const MOST_MS = 30 * 86_400_000;
const IDLE_MS = 7 * 86_400_000;
/** A computer that was not seen for so long has to be paired anew, ms. A choice. */
const UNUSED_MS = 180 * 86_400_000;
/** How often being seen is written down, ms. */
const SEEN_EVERY_MS = 60_000;

/** Signs a person in with a token that nobody had before; the browser gets the token. */
export async function signIn(db: Db, personId: string, nowMs: number): Promise<string> {
  const token = newToken();
  await db
    .insertInto('signin')
    .values({
      tokenHash: hashOf(token),
      personId,
      csrf: newToken(),
      createdMs: nowMs,
      lastSeenMs: nowMs,
      expiresMs: nowMs + MOST_MS,
    })
    .execute();
  return token;
}

export async function signOut(db: Db, tokenHash: string): Promise<void> {
  await db.deleteFrom('signin').where('tokenHash', '=', tokenHash).execute();
}

/** Everywhere but at `kept`. */
export async function signOutElsewhere(db: Db, personId: string, kept: string): Promise<void> {
  await db
    .deleteFrom('signin')
    .where('personId', '=', personId)
    .where('tokenHash', '!=', kept)
    .execute();
}

export async function personBehind(db: Db, token: string, nowMs: number): Promise<Actor | null> {
  const tokenHash = hashOf(token);
  const row = await db
    .selectFrom('signin')
    .innerJoin('person', 'person.id', 'signin.personId')
    .select(['person.id', 'person.name', 'person.role', 'signin.csrf', 'signin.lastSeenMs'])
    .where('signin.tokenHash', '=', tokenHash)
    .where('signin.expiresMs', '>', nowMs)
    .where('signin.lastSeenMs', '>', nowMs - IDLE_MS)
    .where('person.active', '=', 1)
    .executeTakeFirst();
  if (row === undefined) return null;
  const { lastSeenMs, ...person } = row;
  if (nowMs - lastSeenMs > SEEN_EVERY_MS)
    await db
      .updateTable('signin')
      .set({ lastSeenMs: nowMs })
      .where('tokenHash', '=', tokenHash)
      .execute();
  return { kind: 'person', ...person, tokenHash };
}

export async function machineBehind(db: Db, token: string, nowMs: number): Promise<Actor | null> {
  const row = await db
    .selectFrom('machine')
    .select(['id', 'studentId', 'lastSeenMs'])
    .where('tokenHash', '=', hashOf(token))
    .where('revokedMs', 'is', null)
    .where((e) => e(e.fn.coalesce('lastSeenMs', 'pairedMs'), '>', nowMs - UNUSED_MS))
    .executeTakeFirst();
  if (row === undefined) return null;
  if (nowMs - (row.lastSeenMs ?? 0) > SEEN_EVERY_MS)
    await db.updateTable('machine').set({ lastSeenMs: nowMs }).where('id', '=', row.id).execute();
  return { kind: 'machine', id: row.id, studentId: row.studentId };
}
