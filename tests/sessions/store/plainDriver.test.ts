import { existsSync, mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Kysely, SqliteDialect, sql } from 'kysely';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openDatabase } from '../../../src/sessions/store/driver.ts';
import { openPlain } from '../../../src/sessions/store/plainDriver.ts';

interface Tables {
  thing: { id: string; atMs: number; size: number | null; flag: number };
}

const plain = (path: string): Kysely<Tables> =>
  new Kysely({ dialect: new SqliteDialect({ database: openPlain(path) }) });
const ROW = { id: 'größe', atMs: 1_795_597_200_123, size: 0.1, flag: 1 };

describe('the database without a native half', () => {
  let folder: string;
  let path: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'stillcatch-'));
    path = join(folder, 'x.db');
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  const fill = async (db: Kysely<Tables>): Promise<void> => {
    await sql`create table thing (id text primary key, atMs double, size double, flag integer)`.execute(
      db,
    );
    await db.insertInto('thing').values(ROW).execute();
  };
  const rows = (db: Kysely<Tables>) => db.selectFrom('thing').selectAll().orderBy('id').execute();

  it('reads what the native one wrote', async () => {
    const native = openDatabase<Tables>(path);
    await fill(native);
    await native.destroy();
    const db = plain(path);
    expect(await rows(db)).toEqual([ROW]);
    await db
      .insertInto('thing')
      .values({ ...ROW, id: 'b', size: null })
      .execute();
    expect(await rows(db)).toHaveLength(2);
    await db.destroy();
  });

  it('writes what the native one reads', async () => {
    const db = plain(path);
    await fill(db);
    await db.destroy();
    const native = openDatabase<Tables>(path);
    expect(await rows(native)).toEqual([ROW]);
    await native.destroy();
  });

  it('gives back what changed, and takes all of a failed transaction back', async () => {
    const db = plain(path);
    await fill(db);
    const [changed] = await db.updateTable('thing').set({ flag: 0 }).execute();
    expect(changed?.numUpdatedRows).toBe(1n);
    const inserted = db
      .insertInto('thing')
      .values({ ...ROW, id: 'c' })
      .returning('id');
    expect(await inserted.execute()).toEqual([{ id: 'c' }]);
    const failed = db.transaction().execute(async (t) => {
      await t.deleteFrom('thing').execute();
      await t.insertInto('thing').values(ROW).execute();
      await t.insertInto('thing').values(ROW).execute();
    });
    await expect(failed).rejects.toThrow(/UNIQUE/);
    expect(await rows(db)).toHaveLength(2);
    await db.destroy();
  });

  it('holds no lock while nothing is written, and passes over one that a killed process left', async () => {
    const db = plain(path);
    await fill(db);
    expect(existsSync(`${path}.lock`)).toBe(false);
    await db.destroy();
    mkdirSync(`${path}.lock`);
    const long = new Date(Date.now() - 60_000);
    utimesSync(`${path}.lock`, long, long);
    const again = plain(path);
    expect(await rows(again)).toEqual([ROW]);
    await again.destroy();
  });

  it('refuses what is no database', () => {
    writeFileSync(
      path,
      'no database, but long enough to look like one at the first glance '.repeat(40),
    );
    expect(() => openPlain(path)).toThrow(/not a database/);
  });
});
