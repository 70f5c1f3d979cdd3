import { existsSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { readHere } from '../../src/sessions/store/reading.ts';
import { openStore, type SessionStore } from '../../src/sessions/store/store.ts';
import { reviewCache } from '../../src/streaming/reviewCache.ts';
import type { Reviewed } from '../../src/streaming/reviewing.ts';
import { reviewThread } from '../../src/streaming/reviewThread.ts';
import { sessionReviews } from '../../src/streaming/sessionReviews.ts';

const zip = fileURLToPath(new URL('../../recordings/left-mixed.zip', import.meta.url));

let store: SessionStore;
let session: Reviewed;
let root: string;

beforeAll(async () => {
  store = await openStore(mkdtempSync(join(tmpdir(), 'stillcatch-reviews-')), {
    reading: readHere,
  });
  const id = await store.importSession(zip);
  session = { id, folder: store.folderOf(id), plan: (await store.get(id))!.plan };
});
beforeEach(() => {
  root = join(store.places.root, 'cache');
  rmSync(root, { recursive: true, force: true });
});
afterAll(async () => {
  await thread.close();
  await store.close();
  rmSync(store.places.root, { recursive: true, force: true });
});

/** As a program that has just been started; the thread alone is the same. */
const thread = reviewThread();
const fresh = () => sessionReviews(reviewCache(root), thread);
/** A recording that cannot be opened: what answers then comes from the disk. */
const lost = (): Reviewed => ({ ...session, plan: null as unknown as Reviewed['plan'] });

describe('What was computed for a session’s page', () => {
  it('outlives the program and answers the same', async () => {
    const first = fresh();
    await first.prepare(session);
    const overview = await first.overview(session);
    const curves = await first.curves(session, 3);
    const second = fresh();
    expect(await second.overview(lost())).toEqual(overview);
    expect(await second.curves(lost(), 3)).toEqual(curves);
  });

  it('is computed again after the result has changed', async () => {
    await fresh().prepare(session);
    const analysis = join(session.folder, 'derivatives/stillcatch/analysis.json');
    utimesSync(analysis, new Date(), new Date(Date.now() + 5000));
    await expect(fresh().overview(lost())).rejects.toThrow();
    expect((await fresh().overview(session)).repetitions).toHaveLength(13);
  });

  it('is computed again where a file of it is damaged or of another version', async () => {
    const overview = await fresh().overview(session);
    writeFileSync(join(root, session.id, 'overview.json'), '{"repet');
    expect(await fresh().overview(session)).toEqual(overview);
    writeFileSync(join(root, session.id, 'stamp.txt'), '0.0.0 old');
    expect(await fresh().overview(session)).toEqual(overview);
  });

  it('is answered all the same where the disk takes nothing', async () => {
    writeFileSync(root, 'a file in the way');
    const reviews = fresh();
    expect((await reviews.overview(session)).repetitions).toHaveLength(13);
    expect(await reviews.curves(session, 99)).toBeNull();
  });

  it('goes when it is forgotten', async () => {
    const reviews = fresh();
    await reviews.prepare(session);
    expect(existsSync(join(root, session.id))).toBe(true);
    reviews.forget(session.id);
    await expect.poll(() => existsSync(join(root, session.id))).toBe(false);
  });
});
