import { existsSync, readdirSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { type Zippable, zipSync } from 'fflate';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { MAX_UPLOAD_BYTES } from '../../../src/streaming/hubContract/machine.ts';
import { sessionPaths } from '../../../src/hub/sessionPaths.ts';
import { MOTION, soundFiles } from '../../sessions/makeSession.ts';
import { manyFiles } from '../../sessions/manyFiles.ts';
import { type TestHub, testHub } from '../testHub.ts';
import {
  OTHER,
  SESSION,
  announce,
  announced,
  listen,
  send,
  sendCut,
  sessionsOf,
  sha256,
  upload,
  uploadUrl,
} from './sending.ts';

let hub: TestHub;
beforeEach(async () => {
  hub = await testHub();
});
afterEach(() => hub.close());

const sound = (): Record<string, Uint8Array> =>
  Object.fromEntries(
    Object.entries(soundFiles()).map(([n, c]) => [n, new Uint8Array(Buffer.from(c))]),
  );
const staged = (): readonly string[] => readdirSync(hub.context.places.uploads);
const words = (answer: { json: () => unknown }): string =>
  (answer.json() as { error: { message: string } }).error.message;

describe('sending a session', () => {
  it('keeps the file, enters the session and queues its analysis', async () => {
    const answer = await upload(hub, 'sam:machine', 'a1', SESSION);
    expect(answer.json()).toEqual({
      received: SESSION.length,
      bytes: SESSION.length,
      complete: true,
    });
    const [row] = await sessionsOf(hub, 'sam');
    expect(row).toMatchObject({
      clientId: 'a1',
      simulated: 1,
      hand: 'right',
      sha256: sha256(SESSION),
      bytes: SESSION.length,
      receivedMs: hub.clock.ms,
    });
    expect(existsSync(sessionPaths(hub.context.places, 'sam', row!.id).zip)).toBe(true);
    expect(staged()).toEqual([]);
  });

  it('in pieces goes on where it stands, and refuses another place with the facts', async () => {
    await announce(hub, 'sam:machine', 'a1', SESSION);
    await send(hub, 'sam:machine', 'a1', SESSION, 0, 1000);
    const wrong = await send(hub, 'sam:machine', 'a1', SESSION, 500, 2000);
    expect(wrong.statusCode).toBe(409);
    expect(wrong.json()).toMatchObject({
      error: { code: 'offset' },
      received: 1000,
      bytes: SESSION.length,
      complete: false,
    });
    expect((await send(hub, 'sam:machine', 'a1', SESSION, 1000)).json()).toMatchObject({
      complete: true,
    });
  });

  it('goes on after the hub was restarted', async () => {
    await announce(hub, 'sam:machine', 'a1', SESSION);
    await send(hub, 'sam:machine', 'a1', SESSION, 0, 1000);
    await hub.restart();
    const state = await hub.ask('sam:machine', { url: uploadUrl('a1') });
    expect(state.json()).toMatchObject({ received: 1000, complete: false });
    await send(hub, 'sam:machine', 'a1', SESSION, 1000);
    expect(await sessionsOf(hub, 'sam')).toHaveLength(1);
  });

  it('by two senders at once is one session', async () => {
    const line = { port: await listen(hub), headers: await hub.headersOf('sam:machine') };
    await announce(hub, 'sam:machine', 'a1', SESSION);
    await Promise.all(
      Array.from({ length: 4 }, () => sendCut(line, 'a1', SESSION, 0, SESSION.length)),
    );
    const sessions = await sessionsOf(hub, 'sam');
    expect(sessions.map((s) => s.sha256)).toEqual([sha256(SESSION)]);
  });

  it('twenty at once are twenty', async () => {
    const line = { port: await listen(hub), headers: await hub.headersOf('sam:machine') };
    const zips = Array.from({ length: 20 }, (_, i) => {
      const files = sound();
      files[MOTION] = new Uint8Array(
        Buffer.from(
          Buffer.from(files[MOTION]!)
            .toString()
            .replace('0.500000\t', `0.50000${i % 10}\t`),
        ),
      );
      files['sub-01/ses-1/more.txt'] = new Uint8Array([i]);
      return zipSync(files);
    });
    await Promise.all(
      zips.map(async (zip, i) => {
        await announce(hub, 'sam:machine', `a${i}`, zip);
        await sendCut(line, `a${i}`, zip, 0, zip.length);
      }),
    );
    expect(await sessionsOf(hub, 'sam')).toHaveLength(20);
  });

  it('under another name is said to be there, and kept once', async () => {
    await upload(hub, 'sam:machine', 'a1', SESSION);
    const again = await announce(hub, 'sam:machine', 'b2', SESSION);
    expect(again.json()).toMatchObject({ complete: true, sameAs: 'a1' });
    expect(await sessionsOf(hub, 'sam')).toHaveLength(1);
  });

  it('of the same recording with another note beside it is kept once', async () => {
    const note = { 'derivatives/stillcatch/practice.json': Buffer.from('{"note":"windy"}') };
    await upload(hub, 'sam:machine', 'a1', zipSync(sound()));
    const again = await upload(hub, 'sam:machine', 'b2', zipSync({ ...sound(), ...note }));
    expect(again.json()).toMatchObject({ complete: true, sameAs: 'a1' });
    expect(await sessionsOf(hub, 'sam')).toHaveLength(1);
    expect(staged()).toEqual([]);
  });
});

describe('an upload is refused', () => {
  it('to another student’s machine, as though it were not there', async () => {
    await announce(hub, 'sam:machine', 'a1', SESSION);
    const other = await hub.ask('sue:machine', { url: uploadUrl('a1') });
    expect(other.statusCode).toBe(404);
    expect((await send(hub, 'sue:machine', 'a1', SESSION)).statusCode).toBe(404);
    expect(await sessionsOf(hub, 'sam')).toEqual([]);
    expect(await sessionsOf(hub, 'sue')).toEqual([]);
  });

  it('to people and to a machine whose token was revoked', async () => {
    expect((await announce(hub, 'sam', 'a1', SESSION)).statusCode).toBe(403);
    await hub.context.db.updateTable('machine').set({ revokedMs: 1 }).execute();
    expect((await announce(hub, 'sam:machine', 'a1', SESSION)).statusCode).toBe(401);
  });

  it('where it is larger than a session may be', async () => {
    const answer = await hub.ask('sam:machine', {
      url: uploadUrl('a1'),
      method: 'PUT',
      payload: { ...announced(SESSION), bytes: MAX_UPLOAD_BYTES + 1 },
    });
    expect(answer.statusCode).toBe(413);
    expect(words(answer)).toMatch(/At most 128 MB/);
  });

  it('where more comes than was announced', async () => {
    await hub.ask('sam:machine', {
      url: uploadUrl('a1'),
      method: 'PUT',
      payload: { ...announced(SESSION), bytes: 1000 },
    });
    expect((await send(hub, 'sam:machine', 'a1', SESSION)).statusCode).toBe(413);
    expect(await sessionsOf(hub, 'sam')).toEqual([]);
  });

  it('where the bytes are others than announced; it begins anew then', async () => {
    await announce(hub, 'sam:machine', 'a1', SESSION);
    const changed = Buffer.from(SESSION);
    changed[5000]! ^= 1;
    const answer = await send(hub, 'sam:machine', 'a1', changed);
    expect(answer.statusCode).toBe(422);
    expect(answer.json()).toMatchObject({ error: { code: 'hash' } });
    const state = await hub.ask('sam:machine', { url: uploadUrl('a1') });
    expect(state.json()).toMatchObject({ received: 0, complete: false });
    expect((await send(hub, 'sam:machine', 'a1', SESSION)).json()).toMatchObject({
      complete: true,
    });
  });

  it('where another session has the name', async () => {
    await upload(hub, 'sam:machine', 'a1', SESSION);
    const answer = await announce(hub, 'sam:machine', 'a1', OTHER);
    expect(answer.statusCode).toBe(422);
    expect(answer.json()).toMatchObject({ error: { code: 'exists' } });
  });

  it('before it was announced, or with fields that are none', async () => {
    expect((await send(hub, 'sam:machine', 'a1', SESSION)).statusCode).toBe(404);
    await hub.ask('sam:machine', {
      url: uploadUrl('a1'),
      method: 'PUT',
      payload: { ...announced(SESSION), studentId: 'sue' },
    });
    const rows = await hub.context.db.selectFrom('upload').select('studentId').execute();
    expect(rows).not.toContainEqual({ studentId: 'sue' });
    for (const name of ['..%2F..%2Fetc', 'a-b', 'a'.repeat(65)])
      expect((await announce(hub, 'sam:machine', name, SESSION)).statusCode).toBe(400);
  });

  function folderInPlace(): Zippable {
    const files = Object.entries(sound()).filter(([name]) => name !== MOTION);
    return { ...Object.fromEntries(files), [`${MOTION}/`]: new Uint8Array(0) };
  }

  it('by mail too, with 100 000 files: it is not read beyond its end, and nothing is left', async () => {
    const answer = await hub.ask('carl', {
      url: '/api/students/sam/import',
      method: 'POST',
      headers: { 'content-type': 'application/zip' },
      payload: manyFiles(100_000),
    });
    expect(answer.statusCode).toBe(413);
    expect(words(answer)).toBe('The zip holds 100000 files, far too many.');
    expect(staged()).toEqual([]);
    expect(await sessionsOf(hub, 'sam')).toEqual([]);
  });

  const link: Zippable = { ...sound() };
  link[MOTION] = [Buffer.from('/etc/passwd'), { os: 3, attrs: 0o120777 << 16 }];
  it.each<[string, () => Uint8Array, string]>([
    ['names that climb out', () => zipSync({ ...sound(), '../evil': new Uint8Array(4) }), 'path'],
    ['an absolute name', () => zipSync({ ...sound(), '/etc/evil': new Uint8Array(4) }), 'path'],
    ['a link', () => zipSync(link), 'link'],
    ['a bomb', () => zipSync({ ...sound(), [MOTION]: new Uint8Array(40 * 2 ** 20) }), 'bomb'],
    ['100 000 files', () => manyFiles(100_000), '100000 files, far too many'],
    [
      'many small bombs',
      () =>
        zipSync({
          ...sound(),
          ...Object.fromEntries(
            Array.from({ length: 40 }, (_, i) => [`sub-01/f${i}`, new Uint8Array(2 ** 20)]),
          ),
        }),
      'bomb',
    ],
    ['a folder where a recording belongs', () => zipSync(folderInPlace()), 'motion'],
    ['a packed file that is no zip', () => gzipSync(SESSION), 'not a zip'],
    ['text', () => Buffer.from('no zip at all'.repeat(50)), 'not a zip'],
    ['a picture in a zip', () => zipSync({ 'a.png': new Uint8Array(50) }), 'o session in it'],
    [
      'letters where numbers belong',
      () => zipSync({ ...sound(), [MOTION]: Buffer.from('a\tb\tc\n'.repeat(50)) }),
      'motion.tsv',
    ],
  ])('where it holds %s; nothing of it is left', async (_, make, why) => {
    const answer = await upload(hub, 'sam:machine', 'a1', make());
    expect(answer.statusCode).toBe(422);
    expect(words(answer)).toContain(why);
    expect(await sessionsOf(hub, 'sam')).toEqual([]);
    expect(staged()).toEqual([]);
    expect(readdirSync(hub.context.places.students)).toEqual([]);
  });
});
