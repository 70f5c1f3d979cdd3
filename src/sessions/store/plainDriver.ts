import { rmSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import type * as sqlite from 'node-sqlite3-wasm';
import type { SqlFile } from './sqlFile.ts';

/** Its lock is a folder that is there while a transaction runs; none of ours takes this long, ms. */
const STALE_MS = 10_000;
const RETURNS_ROWS = /^\s*(select|with|pragma|explain)\b|\breturning\b/i;

/**
 * SQLite compiled to WebAssembly: no native half, so it is there on every install, and slower. It has no shared
 * memory and so no WAL: a rollback journal, synced at each commit. Files go to and fro between both drivers.
 */
export function openPlain(path: string): SqlFile {
  dropStaleLock(`${path}.lock`);
  const { Database } = createRequire(import.meta.url)('node-sqlite3-wasm') as typeof sqlite;
  const database = new Database(path);
  try {
    leaveWal(database);
  } catch (error) {
    database.close();
    throw error;
  }
  return {
    pragma: (text) => void database.all(`PRAGMA ${text}`),
    prepare: (sql) => statement(database, sql),
    close: () => database.close(),
  };
}

/** A file that the native driver left is in WAL mode: to be read without shared memory, it must be one's own. */
function leaveWal(database: sqlite.Database): void {
  for (const pragma of [
    'locking_mode = EXCLUSIVE',
    'journal_mode = DELETE',
    'locking_mode = NORMAL',
  ])
    database.all(`PRAGMA ${pragma}`);
  // the lock is given back with the next read
  database.all('SELECT count(*) FROM sqlite_schema');
}

/** A process that was killed in a transaction leaves its lock; data folders are kept for one process by a lock of their own. */
function dropStaleLock(lock: string): void {
  const madeMs = statSync(lock, { throwIfNoEntry: false })?.mtimeMs;
  if (madeMs !== undefined && Date.now() - madeMs > STALE_MS) rmSync(lock, { recursive: true });
}

const values = (parameters: readonly unknown[]): sqlite.BindValues =>
  parameters as sqlite.BindValues;

/** Prepared when it runs and freed at once: statements of this driver are not collected. */
const statement = (database: sqlite.Database, sql: string): ReturnType<SqlFile['prepare']> => ({
  reader: RETURNS_ROWS.test(sql),
  all: (parameters = []) => database.all(sql, values(parameters)),
  run: (parameters = []) => database.run(sql, values(parameters)),
  iterate: (parameters = []) => database.all(sql, values(parameters))[Symbol.iterator](),
});
