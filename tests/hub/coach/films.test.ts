import { Readable } from 'node:stream';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { keptSession } from '../keptSession.ts';
import { type TestHub, testHub } from '../testHub.ts';

let hub: TestHub;
beforeEach(async () => {
  hub = await testHub();
  await hub.context.db
    .insertInto('session')
    .values(keptSession('s1', 'sam', 1))
    .execute();
});
afterEach(() => hub.close());

const send = (type: string, pieces: readonly Buffer[]) =>
  hub.ask('sam', {
    url: '/api/sessions/s1/clips?name=a',
    method: 'POST',
    headers: { 'content-type': type },
    payload: Readable.from(pieces),
  });
const MP4 = Buffer.concat([Buffer.from('\0\0\0\x18ftypisom'), Buffer.alloc(100)]);
const MOV = Buffer.concat([Buffer.from('\0\0\0\x18ftypqt  '), Buffer.alloc(100)]);
const WEBM = Buffer.concat([
  Buffer.from('1a45dfa3a34286810142f7810142f2810442f381084282847765626d', 'hex'),
  Buffer.alloc(100),
]);
const cut = (film: Buffer, at: number): Buffer[] => [film.subarray(0, at), film.subarray(at)];

describe('what kind of film it is', () => {
  it.each([
    ['video/mp4', MP4, 1],
    ['video/mp4', MP4, 6],
    ['video/mp4', MP4.subarray(0, 12), 5],
    ['video/webm', WEBM, 2],
    ['video/webm', WEBM, 20],
  ])('is seen whatever the pieces: %s', async (type, film, at) => {
    const answer = await send(type, cut(film, at));
    expect(answer.statusCode).toBe(201);
    expect(answer.json()).toMatchObject({ bytes: film.length });
  });

  it.each([
    ['a .mov whose brand comes later', MOV, 8],
    ['text', Buffer.from('x'.repeat(200)), 3],
    ['too short a beginning', MP4.subarray(0, 6), 3],
  ])('is refused, in pieces too: %s', async (_what, film, at) => {
    expect((await send('video/mp4', cut(film, at))).statusCode).toBe(415);
  });

  it('is none where nothing came', async () => {
    const answer = await send('video/mp4', []);
    expect(answer.statusCode).toBe(400);
    expect(await hub.context.db.selectFrom('clip').selectAll().execute()).toEqual([]);
  });
});
