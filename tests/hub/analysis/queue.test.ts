import { appendFile, copyFile, readFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gunzipSync } from 'node:zlib';
import { sql } from 'kysely';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { AnalysisResult } from '../../../src/analysis/result.ts';
import type { JobAnswer } from '../../../src/hub/analysis/jobMessages.ts';
import { type AnalysisQueue, analysisQueue } from '../../../src/hub/analysis/queue.ts';
import { reanalyseAll, requeue } from '../../../src/hub/analysis/requeue.ts';
import { analysisThread, startAnalysis } from '../../../src/hub/analysis/thread.ts';
import { sessionPaths } from '../../../src/hub/sessionPaths.ts';
import { takeIn } from '../../../src/hub/uploads/takeIn.ts';
import { unpackSession } from '../../../src/sessions/files/unpack.ts';
import { VERSION } from '../../../src/sessions/version.ts';
import type { RepetitionCurves } from '../../../src/streaming/sessionsContract.ts';
import { soundFiles, writeTree } from '../../sessions/makeSession.ts';
import { zipSession } from '../../../src/sessions/write/zipSession.ts';
import { type TestHub, testHub } from '../testHub.ts';

let hub: TestHub;
let queue: AnalysisQueue | null;
beforeEach(async () => {
  hub = await testHub();
  queue = null;
});
afterEach(async () => {
  await queue?.close();
  await hub.close();
});

const RECORDING = fileURLToPath(new URL('../../../recordings/right-mixed.zip', import.meta.url));

async function bring(file = RECORDING, studentId = 'sam'): Promise<string> {
  hub.clock.ms += 1; // one after the other
  const path = join(hub.context.places.uploads, 'x.part');
  await copyFile(file, path);
  const about = { studentId, clientId: 'a1', sha256: 'x', bytes: 1 };
  return (await takeIn(hub.context, { ...about, path })).sessionId;
}

const rowOf = (id: string) =>
  hub.context.db.selectFrom('session').selectAll().where('id', '=', id).executeTakeFirstOrThrow();
const jobs = () => hub.context.db.selectFrom('job').selectAll().execute();
const pathsOf = (id: string) => sessionPaths(hub.context.places, 'sam', id);

const answering = (answer: (sessionId: string) => JobAnswer) => () => ({
  run: (job: { sessionId: string }) => Promise.resolve(answer(job.sessionId)),
  close: () => Promise.resolve(),
});

const FAILED = { ok: false, problem: '', lasting: false, noRoom: false } as const;
/** A row that the table of warnings refuses. */
const BAD = [{ warningId: 'pain-now', atS: 1, text: null as unknown as string }];
const PAIN = '300\t0\tpain\t5';

/** The shipped recording with more rows at the end of its events. */
async function withEvents(rows: string): Promise<string> {
  const folder = join(hub.context.places.uploads, 'unpacked');
  await unpackSession(RECORDING, folder);
  const name = (await readdir(folder, { recursive: true })).find((n) => n.endsWith('_events.tsv'))!;
  await appendFile(join(folder, name), rows);
  const zip = join(hub.context.places.uploads, 'more.zip');
  await zipSession(folder, zip);
  return zip;
}

/** Until the hub has said so on the terminal. */
const said = (words: string): Promise<void> =>
  vi.waitFor(() => expect(hub.said.join('\n')).toContain(words), { timeout: 240_000 });

describe('the queue of analyses', () => {
  it('finds what the recording is known to hold, in a thread, and keeps it beside the zip', async () => {
    const id = await bring();
    queue = analysisQueue(hub.context);
    await queue.idle();
    const expected = JSON.parse(
      await readFile(RECORDING.replace('.zip', '.expected.json'), 'utf8'),
    ) as { counts: { rehearsal: number; ball: number }; entries: string };
    const row = await rowOf(id);
    expect(row).toMatchObject({
      analysed: 1,
      version: VERSION,
      problem: null,
      rehearsals: expected.counts.rehearsal,
      balls: expected.counts.ball,
      ledger: expected.entries,
    });
    expect(await jobs()).toEqual([]);
    const analysis = JSON.parse(await readFile(pathsOf(id).analysis, 'utf8')) as AnalysisResult;
    const curves = gunzipSync(await readFile(pathsOf(id).curves))
      .toString()
      .trim()
      .split('\n');
    expect(curves.map((line) => (JSON.parse(line) as RepetitionCurves).index)).toEqual(
      analysis.repetitions.map((r) => r.index),
    );
    const spreads = JSON.parse(row.spreads) as { rehearsals: { holdS: { count: number } } };
    expect(spreads.rehearsals.holdS.count).toBe(expected.counts.rehearsal);
  });

  it('follows the labels of the coach in ledger, spreads and carry-over', async () => {
    const id = await bring();
    queue = analysisQueue(hub.context);
    await queue.idle();
    const before = await rowOf(id);
    const analysis = JSON.parse(await readFile(pathsOf(id).analysis, 'utf8')) as AnalysisResult;
    const rehearsal = analysis.repetitions.find((r) => r.kind === 'rehearsal')!;
    const label = async (kind: 'ball' | 'ignore' | null) => {
      const about = { sessionId: id, repIndex: rehearsal.index, atS: rehearsal.topS, atMs: 1 };
      await hub.context.db.deleteFrom('relabel').execute();
      if (kind !== null)
        await hub.context.db
          .insertInto('relabel')
          .values({ ...about, kind, originalKind: 'rehearsal', byId: 'carl' })
          .execute();
      await requeue(hub.context, id);
      await queue?.idle();
      return rowOf(id);
    };
    const ignored = await label('ignore');
    expect(ignored.rehearsals).toBe(before.rehearsals - 1);
    const counts = ({ spreads }: typeof before) => {
      type Counted = Record<'rehearsals' | 'balls', { addedFlexionDeg: { count: number } }>;
      const { rehearsals, balls } = JSON.parse(spreads) as Counted;
      return [rehearsals.addedFlexionDeg.count, balls.addedFlexionDeg.count];
    };
    const [r, b] = counts(before) as [number, number];
    expect(counts(ignored)).toEqual([r - 1, b]);
    const ball = await label('ball');
    expect(ball).toMatchObject({ rehearsals: before.rehearsals - 1, balls: before.balls + 1 });
    expect(counts(ball)).toEqual([r - 1, b + 1]);
    // Measured as a ball, and what it was found as stays to be seen; its curves are laid out as a ball's.
    const read = async () =>
      JSON.parse(await readFile(pathsOf(id).analysis, 'utf8')) as AnalysisResult;
    const found = (await read()).repetitions.find((x) => x.index === rehearsal.index)!;
    expect(found).toMatchObject({ kind: 'ball', marked: { detected: 'rehearsal' } });
    if (found.kind !== 'ball') throw new Error('kind');
    const curves = gunzipSync(await readFile(pathsOf(id).curves))
      .toString()
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as RepetitionCurves)
      .find(({ index }) => index === rehearsal.index);
    expect(curves).toMatchObject({ kind: 'ball', alignS: found.deliveryS });
    // Taken back, everything is as it was.
    expect(await label(null)).toEqual(before);
    expect(await read()).toEqual(analysis);
  });

  it('says what is wrong with a recording that cannot be measured, and tries it once', async () => {
    const files = soundFiles();
    const events = Object.keys(files).find((n) => n.endsWith('_events.tsv'))!;
    files[events] = 'onset\tduration\ttrial_type\tvalue\n';
    const zip = join(hub.context.places.uploads, 'made.zip');
    await zipSession(writeTree(files), zip);
    const id = await bring(zip);
    queue = analysisQueue(hub.context);
    await queue.idle();
    expect(await rowOf(id)).toMatchObject({
      analysed: 0,
      problem: expect.stringContaining('calibration') as string,
    });
    expect(await jobs()).toEqual([]);
  });

  it('gives a job up after three failures and says so', async () => {
    const id = await bring();
    let tries = 0;
    const makeThread = answering(() => {
      tries += 1;
      return { ok: false, problem: 'No memory.', lasting: false, noRoom: false };
    });
    queue = analysisQueue(hub.context, { makeThread });
    await queue.idle();
    expect(tries).toBe(3);
    expect((await rowOf(id)).problem).toBe('The analysis failed 3 times. No memory.');
    expect(await jobs()).toMatchObject([{ sessionId: id, problem: 'No memory.', deadIn: VERSION }]);
  });

  it('enters a recording of 7 000 reports of pain, and those of others too', async () => {
    const sick = await bring(await withEvents(`${PAIN}\n`.repeat(7000)));
    const well = await bring(RECORDING, 'sue');
    queue = analysisQueue(hub.context);
    await queue.idle();
    expect(await rowOf(sick)).toMatchObject({ analysed: 1, warnings: 1000, problem: null });
    expect(await rowOf(well)).toMatchObject({ analysed: 1 });
    const entered = await hub.context.db.selectFrom('warning').select('warningId').execute();
    expect(entered).toHaveLength(1000);
  });

  it.each<[string, () => JobAnswer]>([
    ['what was found cannot be entered', () => ({ ok: true, columns: {} as never, warnings: BAD })],
    [
      'the thread cannot be spoken to',
      () => {
        throw new Error('Gone.');
      },
    ],
  ])('lets others go by and gives up where %s', async (_name, answer) => {
    const bad = await bring();
    const good = await bring(RECORDING, 'sue');
    const ran: string[] = [];
    const makeThread = answering((sessionId) => {
      ran.push(sessionId);
      return sessionId === bad ? answer() : { ...FAILED, problem: 'Odd.', lasting: true };
    });
    queue = analysisQueue(hub.context, { makeThread });
    await queue.idle();
    expect(ran).toEqual([bad, good, bad, bad]);
    expect(await jobs()).toMatchObject([{ sessionId: bad, tries: 3, deadIn: VERSION }]);
    expect((await rowOf(bad)).problem).toMatch(/^The analysis failed 3 times\. .+/);
    // Neither the next job nor the next start begins with it again.
    await queue.close();
    queue = analysisQueue(hub.context, { makeThread });
    await queue.idle();
    expect(ran).toHaveLength(4);
  });

  it('waits for room on a full disk, lets others go by, and no try is counted', async () => {
    const large = await bring();
    const small = await bring(RECORDING, 'sue');
    let full = 5;
    const ran: string[] = [];
    const makeThread = answering((sessionId) => {
      ran.push(sessionId);
      if (sessionId === large && full-- > 0) return { ...FAILED, noRoom: true };
      return { ...FAILED, problem: 'Odd.', lasting: true };
    });
    queue = analysisQueue(hub.context, { makeThread, roomMs: 1 });
    await queue.idle();
    expect(ran.slice(0, 2)).toEqual([large, small]);
    expect(ran).toHaveLength(7);
    expect(await rowOf(large)).toMatchObject({ problem: 'Odd.' });
    expect(await jobs()).toEqual([]);
  });

  it('goes on by itself where not even a failure could be entered, once it can', async () => {
    const id = await bring();
    const { db } = hub.context;
    await sql`create trigger no_room before update on job begin select raise(abort, 'database or disk is full'); end`.execute(
      db,
    );
    const makeThread = answering(() => ({ ...FAILED, problem: 'Odd.', lasting: true }));
    queue = analysisQueue(hub.context, { makeThread, roomMs: 1 });
    await said('disk is full');
    await sql`drop trigger no_room`.execute(db);
    await queue.idle();
    expect(await rowOf(id)).toMatchObject({ problem: 'Odd.' });
  });

  it('counts tries that the hub itself did not live to see the end of', async () => {
    const id = await bring();
    await hub.context.db.updateTable('job').set({ tries: 3 }).execute();
    let ran = 0;
    const makeThread = answering(() => ({ ...FAILED, problem: `${(ran += 1)}` }));
    queue = analysisQueue(hub.context, { makeThread });
    await queue.idle();
    expect(ran).toBe(0);
    expect((await rowOf(id)).problem).toBe(
      'The analysis failed 3 times. The hub stopped during the analysis.',
    );
  });

  it('starts a dead job again when it is asked to, and when another version comes', async () => {
    const id = await bring();
    const makeThread = answering(() => ({ ...FAILED, problem: 'No memory.' }));
    const give = async (): Promise<void> => {
      queue = analysisQueue(hub.context, { makeThread });
      await queue.idle();
      await queue.close();
      expect(await jobs()).toMatchObject([{ deadIn: VERSION }]);
    };
    await give();
    expect(await reanalyseAll(hub.context, VERSION)).toBe(0);
    await requeue(hub.context, id);
    expect(await jobs()).toMatchObject([{ deadIn: null, tries: 0, problem: null }]);
    expect((await rowOf(id)).problem).toBeNull();
    await give();
    expect(await reanalyseAll(hub.context, '9.9.9')).toBe(1);
    queue = analysisQueue(hub.context);
    await queue.idle();
    expect(await rowOf(id)).toMatchObject({ analysed: 1, problem: null });
  });

  it('goes on when its thread is killed, and the job is done by the next', async () => {
    const id = await bring();
    let first = true;
    const makeThread = () =>
      analysisThread(() => {
        const worker = startAnalysis();
        if (first) setTimeout(() => void worker.terminate(), 20);
        first = false;
        return worker;
      });
    queue = analysisQueue(hub.context, { makeThread });
    await queue.idle();
    expect(await rowOf(id)).toMatchObject({ analysed: 1, problem: null });
  });

  it('takes up after a restart what it had not done', async () => {
    const id = await bring();
    queue = analysisQueue(hub.context);
    await queue.close(); // in the middle of it
    expect(await jobs()).toMatchObject([{ sessionId: id, tries: 0 }]);
    queue = analysisQueue(hub.context);
    await queue.idle();
    expect((await rowOf(id)).analysed).toBe(1);
  });

  it('does a job again that was queued again while it ran', async () => {
    const id = await bring();
    let runs = 0;
    const makeThread = () => ({
      run: async () => {
        runs += 1;
        if (runs === 1) await requeue(hub.context, id);
        return { ...FAILED, problem: 'Odd.', lasting: true };
      },
      close: () => Promise.resolve(),
    });
    queue = analysisQueue(hub.context, { makeThread });
    await queue.idle();
    expect(runs).toBe(2);
  });

  it('queues everything that another version analysed', async () => {
    const id = await bring();
    await hub.context.db.deleteFrom('job').execute();
    await hub.context.db.updateTable('session').set({ version: '0.0.1', analysed: 1 }).execute();
    expect(await reanalyseAll(hub.context, VERSION)).toBe(1);
    expect(await jobs()).toMatchObject([{ sessionId: id }]);
    expect(await reanalyseAll(hub.context, '0.0.1')).toBe(0);
  });
});
