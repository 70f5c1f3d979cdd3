import { createRequire } from 'node:module';
import { Kysely, SqliteDialect } from 'kysely';
import type Libsql from 'libsql';
import { SessionError } from '../sessionError.ts';

const DAMAGED = 'the index of sessions is damaged';

const NOT_INSTALLED =
  'the database part is not installed; get it with: npm install --include=optional';

/** libsql's native half is an optional package for each system: loaded only here, so that its absence can be told. */
function driver(): typeof Libsql {
  try {
    return createRequire(import.meta.url)('libsql') as typeof Libsql;
  } catch (error) {
    const missing = (error as { code?: string }).code === 'MODULE_NOT_FOUND';
    throw missing ? new SessionError('write-failed', NOT_INSTALLED) : error;
  }
}

/** Can an index of sessions be opened on this computer? */
export function databaseIsInstalled(): boolean {
  try {
    driver();
    return true;
  } catch {
    return false;
  }
}

/**
 * Opens a database file (the index of a data folder, a hub's); the only place that knows the driver. WAL, synced at each commit.
 * @throws SessionError `index-damaged` where it is no sound database.
 */
export function openDatabase<Tables>(path: string): Kysely<Tables> {
  const database = inWords(() => new (driver())(path, { timeout: 2000 }));
  try {
    inWords(() => prepare(database));
  } catch (error) {
    database.close();
    throw error;
  }
  const kept = {
    prepare: (sql: string) => database.prepare(sql),
    close: () => closeWhole(database),
  };
  return new Kysely({ dialect: new SqliteDialect({ database: kept }) });
}

/** The one file then holds all: libsql keeps its log until the statements have been collected. */
function closeWhole(database: Libsql.Database): void {
  database.pragma('wal_checkpoint(TRUNCATE)');
  database.close();
}

function prepare(database: Libsql.Database): void {
  for (const pragma of ['journal_mode = WAL', 'synchronous = FULL', 'foreign_keys = ON'])
    database.pragma(pragma);
  const found = database.prepare('PRAGMA quick_check').all() as { quick_check: string }[];
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
