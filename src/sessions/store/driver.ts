import { createRequire } from 'node:module';
import { Kysely, SqliteDialect, type SqliteStatement } from 'kysely';
import type Libsql from 'libsql';
import { SessionError } from '../sessionError.ts';
import { openPlain } from './plainDriver.ts';
import type { SqlFile } from './sqlFile.ts';

const DAMAGED = 'the index of sessions is damaged';

/** libsql's native half is an optional package for each system; `null` where it was left out. */
function native(): typeof Libsql | null {
  try {
    return createRequire(import.meta.url)('libsql') as typeof Libsql;
  } catch (error) {
    if ((error as { code?: string }).code === 'MODULE_NOT_FOUND') return null;
    throw error;
  }
}

/** Is the fast driver there? Without it the plain one is used. */
export const hasNativeDatabase = (): boolean => native() !== null;

/**
 * Opens a database file (the index of a data folder, a hub's); the only place that knows the drivers. Synced at each commit.
 * @throws SessionError `index-damaged` where it is no sound database.
 */
export function openDatabase<Tables>(path: string): Kysely<Tables> {
  const database = inWords(() => openNative(path) ?? openPlain(path));
  try {
    inWords(() => prepare(database));
  } catch (error) {
    database.close();
    throw error;
  }
  return new Kysely({ dialect: new SqliteDialect({ database }) });
}

/** In WAL mode, but the one file then holds all: libsql keeps its log until the statements have been collected. */
function openNative(path: string): SqlFile | null {
  const Driver = native();
  if (Driver === null) return null;
  const database = new Driver(path, { timeout: 2000 });
  try {
    database.pragma('journal_mode = WAL');
  } catch (error) {
    database.close();
    throw error;
  }
  return {
    pragma: (text) => void database.pragma(text),
    prepare: (sql) => database.prepare(sql) as unknown as SqliteStatement,
    close: () => {
      database.pragma('wal_checkpoint(TRUNCATE)');
      database.close();
    },
  };
}

function prepare(database: SqlFile): void {
  for (const pragma of ['synchronous = FULL', 'foreign_keys = ON']) database.pragma(pragma);
  const found = database.prepare('PRAGMA quick_check').all([]) as { quick_check: string }[];
  if (found[0]?.quick_check !== 'ok') throw new SessionError('index-damaged', DAMAGED);
}

function inWords<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (error instanceof SessionError) throw error;
    const text = `${(error as { code?: string }).code ?? ''} ${(error as Error).message}`;
    if (/NOTADB|CORRUPT|malformed|not a database/i.test(text))
      throw new SessionError('index-damaged', DAMAGED);
    throw new SessionError(
      'write-failed',
      `the index of sessions cannot be opened (${text.trim()})`,
    );
  }
}
