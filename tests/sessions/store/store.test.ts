import type { IndexTables } from '../../../src/sessions/store/tables.ts';
import {
  existsSync,
  mkdirSync,
  readFileSync,
  readdirSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { uptime } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { finish, result, start, step } from '../../../src/analysis/analysis.ts';
import type { AnalysisInput } from '../../../src/analysis/contract.ts';
import type { AnalysisResult } from '../../../src/analysis/result.ts';
import { DEFAULT_PLAN } from '../../../src/coaching/plan.ts';
import { streamSession } from '../../../src/sensors/sources/synthetic/index.ts';
import { CLOCK_FITS_FILE, writeClockFits } from '../../../src/sessions/clockFits.ts';
import { openDatabase } from '../../../src/sessions/store/driver.ts';
import { readHere } from '../../../src/sessions/store/reading.ts';
import type { NewRecording, Recording } from '../../../src/sessions/store/recording.ts';
import { type SessionStore, openStore } from '../../../src/sessions/store/store.ts';
import { refusalOf, scratch } from '../makeSession.ts';

const PLAN = { ...DEFAULT_PLAN, name: 'Spring' };
const NEW: NewRecording = {
  subject: 'me',
  hand: 'left',
  simulated: true,
  plan: PLAN,
  startedAt: new Date('2026-03-01T10:00:00Z'),
  painBefore: 1,
};

const inputs: AnalysisInput[] = [];
let analysis: AnalysisResult;

beforeAll(() => {
  for (const item of streamSession({ seed: 4, hand: 'left', script: 'r r:short-hold b' }))
    if (item.kind === 'event') inputs.push({ kind: 'event', event: item.event });
    else if (item.kind === 'packet')
      for (const sample of item.packet.samples) inputs.push({ kind: 'sample', sample });
  const state = start({ hand: 'left', plan: PLAN });
  for (const input of inputs) step(state, input, () => {});
  finish(state, () => {});
  analysis = result(state, 'live');
  expect(analysis.repetitions.map((r) => r.kind)).toEqual(['rehearsal', 'rehearsal', 'ball']);
});

const clockFits = (folder: string): unknown =>
  JSON.parse(readFileSync(join(folder, CLOCK_FITS_FILE), 'utf8'));

function fill({ writer }: Recording): void {
  for (const input of inputs)
    if (input.kind === 'event') writer.event(input.event);
    else writer.sample(input.sample);
}

async function open(folder: string): Promise<SessionStore> {
  const store = await openStore(folder, { reading: readHere });
  onTestFinished(() => store.close().catch(() => undefined));
  return store;
}

async function practised(store: SessionStore): Promise<string> {
  const recording = await store.begin(NEW);
  fill(recording);
  await recording.finish(analysis, { painAfter: 2, note: 'windy' });
  return recording.id;
}

describe('A practice that came to its end', () => {
  it('is in the list with its figures, and whole when opened', async () => {
    const store = await open(scratch());
    const id = await practised(store);
    const [summary, ...others] = await store.list();
    expect(others).toEqual([]);
    expect(summary).toMatchObject({
      id,
      state: 'complete',
      hand: 'left',
      simulated: true,
      startedMs: NEW.startedAt.getTime(),
      rehearsals: 2,
      scored: 2,
      passed: 1,
      balls: 1,
      ledger: 'rrb',
      painBefore: 1,
      painAfter: 2,
      note: 'windy',
    });
    expect(summary?.spreads.rehearsals.holdS?.count).toBe(2);
    const session = await store.get(id);
    expect(session?.plan).toEqual(PLAN);
    expect(session?.repetitions).toEqual(analysis.repetitions);
    expect(existsSync(join(store.folderOf(id), 'participants.tsv'))).toBe(true);
  });

  it('can be annotated, within bounds', async () => {
    const store = await open(scratch());
    const id = await practised(store);
    await store.annotate(id, { note: 'better', painAfter: 0 });
    expect(await store.get(id)).toMatchObject({ note: 'better', painAfter: 0, painBefore: 1 });
    await expect(store.annotate(id, { painAfter: 11 })).rejects.toThrow(/0 to 10/);
    await expect(store.annotate(id, { note: 'x'.repeat(5001) })).rejects.toThrow(/5000/);
  });

  it('is exported, and taken in elsewhere once', async () => {
    const store = await open(scratch());
    const zip = join(scratch(), 'out.zip');
    await store.exportZip(await practised(store), zip);
    const other = await open(scratch());
    const id = await other.importSession(zip);
    expect(await other.get(id)).toMatchObject({ state: 'complete', rehearsals: 2, note: 'windy' });
    await expect(other.importSession(zip)).rejects.toMatchObject({ code: 'exists' });
    expect(await other.list()).toHaveLength(1);
  });

  it('leaves nothing behind where an import is refused', async () => {
    const store = await open(scratch());
    const bad = join(scratch(), 'bad.zip');
    writeFileSync(bad, 'no zip');
    await expect(store.importSession(bad)).rejects.toMatchObject({ code: 'not-a-zip' });
    expect(readdirSync(store.places.sessions)).toEqual([]);
    expect(await store.list()).toEqual([]);
  });
});

describe('A practice that was cut off', () => {
  it('is shown as interrupted, with all its repetitions after the recovery', async () => {
    const folder = scratch();
    const before = await openStore(folder);
    const { id, writer } = await before.begin(NEW);
    fill({ id, writer } as Recording);
    await writer.flush();
    expect((await before.list())[0]?.state).toBe('running');
    await before.close();
    const store = await open(folder);
    expect((await store.list())[0]).toMatchObject({ id, state: 'interrupted', analysed: false });
    const done: string[] = [];
    await store.recover((each) => done.push(each));
    expect(done).toEqual([id]);
    const session = await store.get(id);
    expect(session).toMatchObject({ state: 'interrupted', analysed: true, painBefore: 1 });
    expect(session?.repetitions.map((r) => r.kind)).toEqual(['rehearsal', 'rehearsal', 'ball']);
    const recovered = clockFits(store.folderOf(id));
    await store.recover((each) => done.push(each));
    expect(done).toHaveLength(1);
    await writer.close();
    // the very same that its own writer found
    await writeClockFits(store.folderOf(id), writer.clockFits());
    expect(recovered).toEqual(clockFits(store.folderOf(id)));
    expect(recovered).toMatchObject({ chest: { runs: [{ answers: 0, kind: 'stamped' }] } });
  });

  it('says why where too little of it is there', async () => {
    const folder = scratch();
    const before = await openStore(folder);
    const { id, writer } = await before.begin(NEW);
    await writer.flush();
    await before.close();
    const store = await open(folder);
    await store.recover();
    expect(await store.get(id)).toMatchObject({
      state: 'interrupted',
      analysed: false,
      problem: expect.stringMatching(/no \.\.\._tracksys/) as string,
      hand: 'right',
    });
    await writer.close();
  });
});

describe('Deleting a session', () => {
  it('can be taken back until it is purged', async () => {
    const store = await open(scratch());
    const id = await practised(store);
    await store.remove(id);
    expect(await store.list()).toEqual([]);
    expect(await store.list({ deleted: true })).toHaveLength(1);
    await store.restore(id);
    expect(await store.list()).toHaveLength(1);
    expect(existsSync(store.folderOf(id))).toBe(true);
    await store.remove(id);
    await store.purge(0);
    expect(await store.list({ deleted: true })).toHaveLength(1);
    await store.purge(Date.now() + 1000);
    expect(await store.list({ deleted: true })).toEqual([]);
    expect(readdirSync(store.places.deleted)).toEqual([]);
    await expect(store.restore(id)).rejects.toMatchObject({ code: 'not-found' });
  });

  it('is not done to one that is being recorded', async () => {
    const store = await open(scratch());
    const { id, writer } = await store.begin(NEW);
    await expect(store.remove(id)).rejects.toMatchObject({ code: 'in-use' });
    await writer.close();
  });

  it('is finished at the next start where the power went in between', async () => {
    const folder = scratch();
    const before = await openStore(folder);
    const id = await practised(before);
    await before.close();
    renameSync(join(folder, 'sessions', id), join(folder, 'deleted', id));
    const store = await open(folder);
    expect(await store.list()).toEqual([]);
    expect(await store.list({ deleted: true })).toHaveLength(1);
  });
});

describe('The index', () => {
  it.each(['rubbish all over', 'rubbish in the middle', 'nothing left'])(
    'is made anew from the folders where it is damaged: %s',
    async (how) => {
      const folder = scratch();
      const before = await openStore(folder);
      const id = await practised(before);
      await before.close();
      const file = join(folder, 'index.db');
      for (const part of ['-wal', '-shm']) rmSync(file + part, { force: true });
      const bytes = readFileSync(file);
      if (how === 'rubbish all over') writeFileSync(file, Buffer.alloc(9000, 'x'));
      else if (how === 'nothing left') rmSync(file);
      else writeFileSync(file, bytes.fill(0x5a, 4096));
      const store = await open(folder);
      expect(store.repaired).toHaveLength(how === 'nothing left' ? 0 : 1);
      await store.recover();
      const session = await store.get(id);
      expect(session).toMatchObject({
        state: 'complete',
        rehearsals: 2,
        note: 'windy',
        hand: 'left',
      });
      expect(session?.plan).toEqual(PLAN);
      expect(session?.repetitions).toEqual(analysis.repetitions);
    },
  );

  it('belongs to one process at a time', async () => {
    const folder = scratch();
    await open(folder);
    await expect(openStore(folder)).rejects.toMatchObject({ code: 'in-use' });
    const other = scratch();
    await open(other);
    const lock = join(other, 'in-use');
    const holder = JSON.parse(readFileSync(lock, 'utf8')) as { pid: number; bootS: number };
    expect(holder.pid).toBe(process.pid);
  });

  it.each([
    ['a living process', { pid: process.ppid }, false],
    ['a process that is gone', { pid: 4_000_000 }, true],
    ['a process of before the machine was started', { pid: process.ppid, bootS: 1 }, true],
    ['nobody: it was cut off', null, true],
  ])('is held by %s', async (_, holder, free) => {
    const folder = scratch();
    const bootS = Math.round(Date.now() / 1000 - uptime());
    writeFileSync(join(folder, 'in-use'), holder ? JSON.stringify({ bootS, ...holder }) : '{"pi');
    if (free) await open(folder);
    else await expect(openStore(folder)).rejects.toMatchObject({ code: 'in-use' });
  });

  it('of a newer version is left alone', async () => {
    const folder = scratch();
    await (await openStore(folder)).close();
    const db = openDatabase<IndexTables>(join(folder, 'index.db'));
    await db
      .insertInto('kysely_migration' as 'session')
      .values({ name: '999-later', timestamp: '2030' } as never)
      .execute();
    await db.destroy();
    await expect(openStore(folder)).rejects.toMatchObject({ code: 'newer-version' });
  });

  it('is opened again and again', async () => {
    const folder = scratch();
    for (let k = 0; k < 3; k++) await (await openStore(folder)).close();
    expect(
      readdirSync(folder)
        .filter((n) => !/-(wal|shm)$/.test(n))
        .sort(),
    ).toEqual(['deleted', 'index.db', 'sessions']);
  });

  it('forgets a session whose folder somebody took away, and takes in one that was put there', async () => {
    const folder = scratch();
    const before = await openStore(folder);
    const id = await practised(before);
    await before.close();
    renameSync(join(folder, 'sessions', id), join(folder, 'sessions', 'putHere'));
    mkdirSync(join(folder, 'sessions', 'half.part'));
    const store = await open(folder);
    await store.recover();
    expect((await store.list()).map((s) => s.id)).toEqual(['putHere']);
    expect(await store.get('putHere')).toMatchObject({ state: 'complete', rehearsals: 2 });
    expect(readdirSync(store.places.sessions)).toEqual(['putHere']);
  });

  it('lets no id become another path', async () => {
    const store = await open(scratch());
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom('..', '../x', 'a/b', '', 'a\0', 'a.b', '%2e'),
        async (id) => {
          expect(() => store.folderOf(id)).toThrow(/session not found/);
          await expect(Promise.resolve().then(() => store.remove(id))).rejects.toThrow(/not found/);
        },
      ),
    );
  });

  it('cannot be where a file is', async () => {
    const file = join(scratch(), 'file');
    writeFileSync(file, '');
    await expect(openStore(file)).rejects.toMatchObject({ code: 'write-failed' });
  });
});

it('A session that is being recorded is no sound recording yet where nothing came', async () => {
  const store = await open(scratch());
  const { id, writer } = await store.begin(NEW);
  expect((await refusalOf(store.folderOf(id))).code).toBe('missing-file');
  await writer.close();
});
