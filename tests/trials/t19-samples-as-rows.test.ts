// Trial 19: WiseLibs/better-sqlite3#806: about 95 ms for each autocommitted insert. Samples are never rows, and
// a session's repetitions are written in one transaction.
import type { IndexTables } from '../../src/sessions/store/tables.ts';
import { sql } from 'kysely';
import { describe, expect, it, onTestFinished } from 'vitest';
import { finish, result, start, step } from '../../src/analysis/analysis.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { streamSession } from '../../src/sensors/sources/synthetic/index.ts';
import { openDatabase } from '../../src/sessions/store/driver.ts';
import { openStore } from '../../src/sessions/store/store.ts';
import { scratch } from '../sessions/makeSession.ts';

async function practised() {
  const store = await openStore(scratch());
  const db = openDatabase<IndexTables>(store.places.index);
  onTestFinished(async () => {
    await db.destroy();
    await store.close();
  });
  const recording = await store.begin({
    subject: 'me',
    hand: 'right',
    simulated: true,
    plan: DEFAULT_PLAN,
    startedAt: new Date(),
  });
  const state = start({ hand: 'right', plan: DEFAULT_PLAN });
  let samples = 0;
  for (const item of streamSession({ seed: 2, hand: 'right', script: 'r r b r r b' })) {
    if (item.kind === 'event') {
      recording.writer.event(item.event);
      step(state, item, () => {});
    } else if (item.kind === 'packet')
      for (const sample of item.packet.samples) {
        samples++;
        recording.writer.sample(sample);
        step(state, { kind: 'sample', sample }, () => {});
      }
  }
  finish(state, () => {});
  return { db, recording, samples, analysis: result(state, 'live') };
}

type Db = Awaited<ReturnType<typeof practised>>['db'];

async function rowsIn(db: Db): Promise<number> {
  const tables = await db.introspection.getTables();
  let rows = 0;
  for (const { name } of tables) {
    const counted = await sql<{ n: number }>`select count(*) n from ${sql.table(name)}`.execute(db);
    rows += counted.rows[0]!.n;
  }
  return rows;
}

describe('The index of sessions', () => {
  it('grows by a row a repetition, never by samples', async () => {
    const { db, recording, samples, analysis } = await practised();
    const before = await rowsIn(db);
    await recording.finish(analysis);
    expect(samples).toBeGreaterThan(10_000);
    expect(analysis.repetitions).toHaveLength(6);
    expect((await rowsIn(db)) - before).toBe(
      analysis.repetitions.length + analysis.warnings.length,
    );
  });

  it('has all repetitions of a session or none: one of them failing takes the others back', async () => {
    const { db, recording, analysis } = await practised();
    await sql`create trigger fail before insert on repetition when new.position = 4
      begin select raise(abort, 'no'); end`.execute(db);
    await expect(recording.finish(analysis)).rejects.toThrow();
    expect(await db.selectFrom('repetition').selectAll().execute()).toEqual([]);
    const session = await db.selectFrom('session').selectAll().executeTakeFirstOrThrow();
    expect(session).toMatchObject({ analysed: 0, state: 'running' });
    await sql`drop trigger fail`.execute(db);
    await recording.finish(analysis);
    expect(await db.selectFrom('repetition').selectAll().execute()).toHaveLength(6);
  });
});
