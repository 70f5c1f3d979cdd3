import type { SqliteStatement } from 'kysely';

/** An open database file, as kysely's dialect takes it; either driver. */
export interface SqlFile {
  pragma(text: string): void;
  prepare(sql: string): SqliteStatement;
  close(): void;
}
