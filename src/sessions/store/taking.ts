import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { Kysely } from 'kysely';
import { SessionError } from '../sessionError.ts';
import { type Unindexed, enterNew, enterWaiting } from './indexing.ts';
import type { Places } from './places.ts';
import type { SessionReading } from './reading.ts';
import type { IndexTables } from './tables.ts';

type Index = Kysely<IndexTables>;

export interface Taking {
  importSession(path: string): Promise<string>;
  recover(done?: (id: string, problem: string | null) => void): Promise<void>;
  /** Why the analysis of a session broke off; tried again by the next program. */
  brokeOff(id: string): string | null;
  close(): Promise<void>;
}

const wordsOf = (error: unknown): string => (error instanceof Error ? error.message : 'unknown');

/** Takes into the index what came from elsewhere or was left by an interruption. */
export function sessionTaking(db: Index, places: Places, reading: SessionReading): Taking {
  const broken = new Map<string, string>();
  let closing = false;
  let turn: Promise<unknown> = Promise.resolve();
  const recoverOne = async (session: Unindexed): Promise<string | null | undefined> => {
    const { id } = session;
    try {
      const found = await reading.look(session);
      return (await enterWaiting(db, session, found)) ? found.problem : undefined;
    } catch (error) {
      if (closing) return undefined;
      const problem = `the analysis failed (${wordsOf(error)}); the recording is saved, and the next start tries again`;
      broken.set(id, problem);
      return problem;
    }
  };
  return {
    importSession(path) {
      // One at a time: two of the same must not meet half-way.
      const importing = turn.then(() => importOne(db, places, reading, path));
      turn = importing.catch(() => undefined);
      return importing;
    },
    async recover(done) {
      for (const session of await waiting(db, places)) {
        if (closing) return;
        if (broken.has(session.id)) continue;
        const problem = await recoverOne(session);
        if (problem !== undefined) done?.(session.id, problem);
      }
    },
    brokeOff: (id) => broken.get(id) ?? null,
    close() {
      closing = true;
      return reading.close();
    },
  };
}

async function waiting(db: Index, places: Places): Promise<readonly Unindexed[]> {
  const rows = await db
    .selectFrom('session')
    .select(['id', 'state', 'deletedMs', 'painBefore', 'painAfter', 'note'])
    .where('analysed', '=', 0)
    .where('problem', 'is', null)
    .where('state', '!=', 'running')
    .execute();
  return rows.map(({ id, state, deletedMs, ...notes }) => ({
    id,
    folder: join(deletedMs === null ? places.sessions : places.deleted, id),
    deletedMs,
    ...(state === 'unread' ? {} : { state, notes }),
  }));
}

async function importOne(
  db: Index,
  places: Places,
  reading: SessionReading,
  path: string,
): Promise<string> {
  const id = await reading.nameOf(path).catch(brokenOff);
  const there = await db.selectFrom('session').select('id').where('id', '=', id).executeTakeFirst();
  if (there !== undefined)
    throw new SessionError('exists', 'this session is already here (perhaps among the deleted)');
  const folder = join(places.sessions, id);
  try {
    const session = { id, folder, deletedMs: null, state: 'complete' } as const;
    await enterNew(db, folder, await reading.takeIn(path, session).catch(brokenOff));
    return id;
  } catch (error) {
    // Whole or not at all: a thread that died has tidied nothing.
    for (const half of [folder, `${folder}.part`]) await rm(half, { recursive: true, force: true });
    throw error;
  }
}

function brokenOff(error: unknown): never {
  if (error instanceof SessionError) throw error;
  throw new SessionError(
    'broke-off',
    `the recording was not imported: the analysis failed (${wordsOf(error)}). Nothing was changed; you can try again`,
  );
}
