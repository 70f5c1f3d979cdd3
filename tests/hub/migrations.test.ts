import { join } from 'node:path';
import { sql } from 'kysely';
import { expect, it } from 'vitest';
import { hubMigrator } from '../../src/hub/db/migrations.ts';
import type { HubTables } from '../../src/hub/db/tables.ts';
import { firstBroken } from '../../src/hub/log/chain.ts';
import { pageOfLog } from '../../src/hub/log/shown.ts';
import { openDatabase } from '../../src/sessions/store/driver.ts';
import { scratch } from '../sessions/makeSession.ts';

it('a log that held names is taken over as numbers: who is here keeps the name, whom nobody knows has none', async () => {
  const db = openDatabase<HubTables>(join(scratch(), 'hub.db'));
  await hubMigrator(db).migrateTo('005-edited-notes');
  for (const [id, name, role] of [
    ['carl', 'Carl', 'coach'],
    ['sam1', 'Sam', 'student'],
    ['sam2', 'Sam', 'student'],
    ['sue', 'Sue', 'student'],
  ] as const)
    await db
      .insertInto('person')
      .values({
        ...{ id, name, role, login: id, passwordHash: null, active: 1 },
        ...{ createdMs: 0, coachId: role === 'student' ? 'carl' : null, hand: 'right' },
      })
      .execute();
  for (const [i, [who, act, what]] of [
    ['Carl', 'plan', 'student sue'],
    ['Sam', 'login', 'Sam'],
    [null, 'login-failed', 'something typed'],
    ['Carl', 'relabel', 'session abc, repetition 3'],
  ].entries())
    await sql`insert into audit (atMs, who, act, what, address) values (${i}, ${who}, ${act}, ${what}, '::1')`.execute(
      db,
    );
  expect((await hubMigrator(db).migrateToLatest()).error).toBeUndefined();
  expect(await pageOfLog(db, undefined)).toMatchObject([
    { atMs: 3, by: { name: 'Carl' }, about: { session: { student: null }, repetition: 3 } },
    { atMs: 2, by: null, about: {}, address: '::1' },
    { atMs: 1, by: null, act: 'login', about: {} },
    { atMs: 0, by: { name: 'Carl', role: 'coach' }, about: { person: { name: 'Sue' } } },
  ]);
  const { rows } = await sql<{ about: string }>`select about from log`.execute(db);
  expect(JSON.stringify(rows)).not.toMatch(/typed|Sam|abc/);
  expect(await firstBroken(db)).toBeNull();
  await db.destroy();
});
