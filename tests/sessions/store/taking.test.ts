import { cpSync, existsSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import { describe, expect, it, onTestFinished } from 'vitest';
import {
  type SessionReading,
  readHere,
  readingThread,
} from '../../../src/sessions/store/reading.ts';
import { type SessionStore, openStore } from '../../../src/sessions/store/store.ts';
import { unpackSession } from '../../../src/sessions/files/unpack.ts';
import { scratch } from '../makeSession.ts';

const recording = (name: string): string =>
  fileURLToPath(new URL(`../../../recordings/${name}.zip`, import.meta.url));
const RESULT = 'derivatives/stillcatch/analysis.json';

async function open(root: string, reading: SessionReading = readHere): Promise<SessionStore> {
  const store = await openStore(root, { reading });
  onTestFinished(() => store.close().catch(() => undefined));
  return store;
}

/** A data folder with recordings that have neither row nor result, as after a crash. */
async function cutOff(...names: readonly string[]): Promise<string> {
  const root = scratch();
  await (await openStore(root)).close();
  for (const name of names) {
    const folder = join(root, 'sessions', name);
    await unpackSession(recording(`${name.replace('X', '-')}`), folder);
    rmSync(join(folder, 'derivatives'), { recursive: true, force: true });
  }
  return root;
}

/** A thread that dies of every job, as one does that runs out of memory. */
const dying = (): SessionReading =>
  readingThread(
    () =>
      new Worker(
        `require('node:worker_threads').parentPort.on('message', () => { throw new Error('out of memory') })`,
        { eval: true },
      ),
  );

describe('A thread of its own', () => {
  it('takes a recording in and recovers one with the very result that is had without it', async () => {
    const [here, there] = [await open(scratch()), await open(scratch(), readingThread())];
    const [a, b] = [
      await here.importSession(recording('left-mixed')),
      await there.importSession(recording('left-mixed')),
    ];
    expect(b).toBe(a);
    // Its date is that of its files, where it says none.
    expect(await there.get(b)).toEqual({
      ...(await here.get(a)),
      startedMs: expect.any(Number) as number,
    });
    await expect(there.importSession(recording('left-mixed'))).rejects.toMatchObject({
      code: 'exists',
    });
    const files = (store: SessionStore): Buffer => readFileSync(join(store.folderOf(a), RESULT));
    expect(files(there)).toEqual(files(here));
    const problem = { code: 'not-a-zip', message: 'this is not a zip file, or it is cut short' };
    await expect(there.importSession(fileURLToPath(import.meta.url))).rejects.toMatchObject(
      problem,
    );
  });
});

describe('Where the thread dies', () => {
  it('an import says so, leaves nothing behind and can be tried again', async () => {
    const root = scratch();
    const store = await open(root, dying());
    await expect(store.importSession(recording('left-mixed'))).rejects.toMatchObject({
      code: 'broke-off',
      message:
        'the recording was not imported: the analysis failed (out of memory). Nothing was changed; you can try again',
    });
    expect(readdirSync(store.places.sessions)).toEqual([]);
    await store.close();
    const again = await open(root);
    await again.importSession(recording('left-mixed'));
    expect(await again.list()).toMatchObject([{ rehearsals: 9, analysed: true }]);
  });

  it('after the files were copied, an import leaves nothing behind either', async () => {
    const store = await open(scratch(), {
      ...readHere,
      async takeIn(path, session) {
        await readHere.takeIn(path, session);
        throw new Error('killed');
      },
    });
    await expect(store.importSession(recording('left-mixed'))).rejects.toMatchObject({
      code: 'broke-off',
    });
    expect(readdirSync(store.places.sessions)).toEqual([]);
    expect(await store.list()).toEqual([]);
  });

  it('a recovery says so of that session, goes on with the next, and tries it again at the next start', async () => {
    const root = await cutOff('leftXmixed', 'rightXmixed');
    const store = await open(root, {
      ...readHere,
      look: (session) =>
        session.id === 'leftXmixed'
          ? Promise.reject(new Error('out of memory'))
          : readHere.look(session),
    });
    const done: (readonly [string, string | null])[] = [];
    await store.recover((id, problem) => done.push([id, problem]));
    const words =
      'the analysis failed (out of memory); the recording is saved, and the next start tries again';
    expect(done.sort()).toEqual([
      ['leftXmixed', words],
      ['rightXmixed', null],
    ]);
    expect(await store.get('leftXmixed')).toMatchObject({ analysed: false, problem: words });
    await store.recover((id, problem) => done.push([id, problem]));
    expect(done).toHaveLength(2);
    await store.close();
    const next = await open(root);
    expect(await next.get('leftXmixed')).toMatchObject({ analysed: false, problem: null });
    await next.recover();
    expect(await next.get('leftXmixed')).toMatchObject({ analysed: true, rehearsals: 9 });
  });
});

describe('While a session is being recovered', () => {
  /** A store whose reading waits in the middle of `id` until it is let go. */
  async function halfWay(id: string) {
    const root = await cutOff(id);
    let go = (): void => undefined;
    const held = new Promise<void>((resolve) => (go = resolve));
    let reached = (): void => undefined;
    const there = new Promise<void>((resolve) => (reached = resolve));
    const store = await open(root, {
      ...readHere,
      async look(session) {
        const found = await readHere.look(session);
        reached();
        await held;
        return found;
      },
    });
    const recovered = store.recover();
    await there;
    return { store, go, recovered };
  }

  it('what is said of it stays', async () => {
    const { store, go, recovered } = await halfWay('leftXmixed');
    await store.annotate('leftXmixed', { note: 'windy', painAfter: 2 });
    go();
    await recovered;
    expect(await store.get('leftXmixed')).toMatchObject({
      analysed: true,
      note: 'windy',
      painAfter: 2,
    });
  });

  it('deleting it holds, and nothing of it appears where it lay', async () => {
    const { store, go, recovered } = await halfWay('leftXmixed');
    await store.remove('leftXmixed');
    go();
    await recovered;
    expect(await store.list()).toEqual([]);
    expect(existsSync(store.folderOf('leftXmixed'))).toBe(false);
    await store.restore('leftXmixed');
    await store.recover();
    expect(await store.get('leftXmixed')).toMatchObject({ analysed: true });
  });

  it('the program can end; the next one does it', async () => {
    const root = await cutOff('leftXmixed');
    const store = await open(root, readingThread());
    const done: string[] = [];
    const recovered = store.recover((id) => done.push(id));
    await store.close();
    await recovered;
    expect(done).toEqual([]);
    const next = await open(root);
    await next.recover();
    expect(await next.list()).toMatchObject([{ analysed: true }]);
  });
});

describe('The same recording sent twice at once', () => {
  it('is taken in once', async () => {
    const store = await open(scratch());
    const zip = recording('left-mixed');
    const copy = join(scratch(), 'copy.zip');
    cpSync(zip, copy);
    const both = await Promise.allSettled([store.importSession(zip), store.importSession(copy)]);
    expect(both.map((b) => b.status)).toEqual(['fulfilled', 'rejected']);
    expect(await store.list()).toMatchObject([{ rehearsals: 9, analysed: true }]);
  });
});
