import { mkdir, readFile, readdir, rm, writeFile } from 'node:fs/promises';
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { unzipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { sessionPaths } from '../../src/hub/sessionPaths.ts';
import type { HubSession } from '../../src/streaming/hubContract/review.ts';
import type {
  PlanConflict,
  PlanVersion,
  StudentList,
} from '../../src/streaming/hubContract/students.ts';
import { type TestHub, testHub } from './testHub.ts';
import { keptSession } from './keptSession.ts';

let hub: TestHub;
beforeAll(async () => {
  hub = await testHub();
  const { db, places } = hub.context;
  for (const studentId of ['sam', 'sue', 'tom'])
    await db
      .insertInto('plan')
      .values({
        id: `${studentId}plan`,
        studentId,
        number: 1,
        plan: JSON.stringify(DEFAULT_PLAN),
        validFromMs: 0,
        createdMs: 0,
        byId: studentId === 'tom' ? 'olga' : 'carl',
        reachedMs: null,
      })
      .execute();
  await db
    .insertInto('session')
    .values(keptSession('s1', 'sam', hub.clock.ms))
    .execute();
  const paths = sessionPaths(places, 'sam', 's1');
  await mkdir(dirname(paths.zip), { recursive: true });
  const expected = new URL('../../recordings/right-mixed.zip', import.meta.url);
  await writeFile(paths.zip, readFileSync(expected));
  const repetitions = [
    { index: 1, kind: 'rehearsal', topS: 3, verdict: { passed: true }, flags: [] },
    { index: 2, kind: 'rehearsal', topS: 9, verdict: { passed: false }, flags: [] },
    { index: 3, kind: 'ball', topS: 15, flags: [] },
  ];
  await writeFile(paths.analysis, JSON.stringify({ repetitions, warnings: [] }));
});
afterAll(() => hub.close());

const get = async <T>(who: string, url: string): Promise<T> =>
  (await hub.ask(who, { url })).json<T>();
const send = (
  who: string,
  method: 'POST' | 'PUT' | 'PATCH' | 'DELETE',
  url: string,
  payload?: object,
) => hub.ask(who, { method, url, ...(payload && { payload }) });
const session = (who: string): Promise<HubSession> => get<HubSession>(who, '/api/sessions/s1');

describe('a coach', () => {
  it('sees own students only, those who need a look first', async () => {
    const { students } = await get<StudentList>('carl', '/api/students');
    expect(students.map(({ id }) => id)).toEqual(['sam', 'sue']);
    expect(students[0]).toMatchObject({ nextSessionId: 's1', unreviewed: 1 });
    for (const url of ['/api/students/sam', '/api/sessions/s1', '/api/students/sam/export'])
      expect((await hub.ask('olga', { url })).statusCode, url).toBe(404);
  });

  it('and a student write to each other, each removes only own words', async () => {
    const made = await send('carl', 'POST', '/api/sessions/s1/comments', {
      text: 'Hold.',
      index: 2,
    });
    const { id } = made.json<{ id: string }>();
    const pinned = { text: 'This one.', index: 1, momentS: null, replyTo: null };
    const one = await send('carl', 'POST', '/api/sessions/s1/comments', pinned);
    expect(one.json()).toMatchObject({ index: 1, momentS: null, replyTo: null });
    await send('carl', 'DELETE', `/api/comments/${one.json<{ id: string }>().id}`);
    const reply = { text: 'Like this?', replyTo: id };
    expect((await send('sam', 'POST', '/api/sessions/s1/comments', reply)).statusCode).toBe(201);
    expect((await session('sam')).comments.map((c) => [c.byRole, c.mine])).toEqual([
      ['coach', false],
      ['student', true],
    ]);
    expect((await send('sam', 'DELETE', `/api/comments/${id}`)).statusCode).toBe(403);
    expect((await send('sue', 'DELETE', `/api/comments/${id}`)).statusCode).toBe(404);
    const lost = { text: 'x', replyTo: 'elsewhere' };
    expect((await send('sam', 'POST', '/api/sessions/s1/comments', lost)).statusCode).toBe(404);
  });

  it('sets the kind of a repetition by hand; what was measured stays, and all is counted anew', async () => {
    const url = '/api/sessions/s1/relabels/2';
    expect((await send('sam', 'PUT', url, { kind: 'ball' })).statusCode).toBe(403);
    await send('carl', 'PUT', url, { kind: 'ball' });
    await send('carl', 'PUT', url, { kind: 'ignore' });
    const set = await session('carl');
    expect(set.relabels).toMatchObject([{ index: 2, kind: 'ignore', originalKind: 'rehearsal' }]);
    expect(set.summary).toMatchObject({ rehearsals: 1, balls: 1, ballsInMix: 0, scored: 1 });
    await send('carl', 'PUT', url, { kind: null });
    expect((await session('carl')).summary).toMatchObject({ rehearsals: 2, ballsInMix: 1 });
    expect(
      (await send('carl', 'PUT', '/api/sessions/s1/relabels/9', { kind: 'ball' })).statusCode,
    ).toBe(404);
  });

  it('marks a session as reviewed and takes it back', async () => {
    await send('carl', 'PUT', '/api/sessions/s1/reviewed', { reviewed: true });
    expect((await session('sam')).reviewedMs).toBe(hub.clock.ms);
    await send('carl', 'PUT', '/api/sessions/s1/reviewed', { reviewed: false });
    expect((await session('sam')).reviewedMs).toBeNull();
  });

  it('changes the plan in versions that say what changed; a plan that cannot be is refused', async () => {
    const plan = { ...DEFAULT_PLAN, targets: { ...DEFAULT_PLAN.targets, holdS: { min: 1.2 } } };
    const url = '/api/students/sam/plans';
    const made = await send('carl', 'POST', url, {
      plan,
      validFromMs: hub.clock.ms,
      basedOn: 1,
    });
    expect(made.json()).toMatchObject({
      number: 2,
      changes: ['Hold at the top: at least 1.2 s, was at least 1 s.'],
    });
    const bad = { ...DEFAULT_PLAN, ratio: { rehearsals: 0, balls: 1 } };
    expect(
      (await send('carl', 'POST', url, { plan: bad, validFromMs: 1, basedOn: 2 })).statusCode,
    ).toBe(400);
    expect((await send('olga', 'POST', url, { plan, validFromMs: 1, basedOn: 2 })).statusCode).toBe(
      404,
    );
    expect((await send('sam', 'POST', url, { plan, validFromMs: 1, basedOn: 2 })).statusCode).toBe(
      403,
    );
  });

  it('saves no plan over a version that its writer has not seen, and shows that version', async () => {
    const url = '/api/students/sam/plans';
    const named = (name: string) => ({ ...DEFAULT_PLAN, name });
    const write = (name: string, basedOn: number) =>
      send('carl', 'POST', url, { plan: named(name), validFromMs: hub.clock.ms, basedOn });
    const numbers = async () => (await get<PlanVersion[]>('carl', url)).map(({ number }) => number);
    const before = await numbers();
    const base = before[0]!;
    // Two tabs, opened at the same time, both saving at once.
    const both = await Promise.all([write('First', base), write('Second', base)]);
    expect(both.map(({ statusCode }) => statusCode).sort()).toEqual([201, 409]);
    const saved = both.find(({ statusCode }) => statusCode === 201)!.json<PlanVersion>();
    const refused = both.find(({ statusCode }) => statusCode === 409)!.json<PlanConflict>();
    expect(refused.newest).toEqual(saved);
    expect(refused.error).toMatchObject({ code: 'plan-changed' });
    expect(refused.error.message).toMatch(/^Carl saved version \d+ of this plan meanwhile/);
    expect(await numbers()).toEqual([base + 1, ...before]);
    expect((await write('Chosen', base + 1)).statusCode).toBe(201);
    const without = { plan: named('x'), validFromMs: 1 };
    expect((await send('carl', 'POST', url, without)).statusCode).toBe(400);
  });
});

const film = Buffer.concat([Buffer.from('1a45dfa3934282847765626d', 'hex'), Buffer.alloc(992, 7)]);
const attach = (who: string, payload: Buffer, type = 'video/webm') =>
  hub.ask(who, {
    method: 'POST',
    url: '/api/sessions/s1/clips?name=top.webm',
    headers: { 'content-type': type },
    payload,
  });

describe('a film', () => {
  it('is kept, lined up, sent in ranges and really deleted', async () => {
    const made = await attach('sam', film);
    expect(made.statusCode).toBe(201);
    const { id } = made.json<{ id: string }>();
    const url = `/api/clips/${id}`;
    await send('carl', 'PATCH', url, { startS: -2.5 });
    expect((await session('carl')).clips).toMatchObject([{ id, startS: -2.5, bytes: 1004 }]);
    expect((await send('carl', 'PATCH', url, { startS: '-2.5' })).statusCode).toBe(400);
    await send('carl', 'PATCH', url, { startS: null });
    expect((await session('carl')).clips).toMatchObject([{ id, startS: null }]);
    const part = await hub.ask('carl', { url, headers: { range: 'bytes=2-5' } });
    expect(part.statusCode).toBe(206);
    expect(part.headers['content-range']).toBe('bytes 2-5/1004');
    expect(part.rawPayload).toEqual(film.subarray(2, 6));
    const end = await hub.ask('carl', { url, headers: { range: 'bytes=-4' } });
    expect(end.rawPayload).toHaveLength(4);
    expect((await hub.ask('carl', { url, headers: { range: 'bytes=5000-' } })).statusCode).toBe(
      416,
    );
    expect((await hub.ask('sue', { url })).statusCode).toBe(404);
    await send('sam', 'DELETE', url);
    expect(await readdir(hub.context.places.clips)).toEqual([]);
  });

  it('that is none is refused and leaves nothing behind', async () => {
    expect((await attach('sam', Buffer.from('<html>'))).statusCode).toBe(415);
    expect((await attach('sam', film, 'text/html')).statusCode).toBe(415);
    const renamed = Buffer.from('0000001466747970717420200000000071742020', 'hex'); // ftyp, brand qt
    for (const [bytes, type] of [
      [renamed, 'video/mp4'],
      [renamed, 'video/quicktime'],
    ] as const) {
      const refused = await attach('sam', bytes, type);
      expect(refused.statusCode).toBe(415);
      expect(refused.json<{ error: { message: string } }>().error.message).toMatch(/\.mov.*H\.264/);
    }
    expect(await readdir(hub.context.places.clips)).toEqual([]);
  });
});

describe('everything of a student', () => {
  const exported = async (): Promise<Record<string, Uint8Array>> => {
    const answer = await hub.ask('sam', { url: '/api/students/sam/export' });
    expect(answer.statusCode).toBe(200);
    return unzipSync(answer.rawPayload);
  };
  const json = <T>(file: Uint8Array | undefined): T =>
    JSON.parse(Buffer.from(file!).toString()) as T;

  it('comes in one zip: recordings and films as they came, and all that was written', async () => {
    await attach('sam', film);
    await send('carl', 'POST', '/api/students/sam/lessons', { atMs: 5, text: 'In the studio' });
    const files = await exported();
    const { clips } = await session('carl');
    expect(Object.keys(files).sort()).toEqual([
      'README.txt',
      'analysis/s1.json',
      `films/${clips[0]?.id}.webm`,
      'manifest.json',
      'sessions/s1.zip',
      'student.json',
    ]);
    expect(Buffer.from(files[`films/${clips[0]?.id}.webm`]!).equals(film)).toBe(true);
    expect(json(files['manifest.json'])).toMatchObject({ missing: [] });
    const all = json<Record<string, unknown[]> & { sessions: HubSession[] }>(files['student.json']);
    expect(all).toMatchObject({
      student: { name: 'Sam', coach: 'Carl', hand: 'right' },
      lessons: [{ text: 'In the studio' }],
      computers: [{ name: 'Laptop' }],
    });
    expect(all['plans']).toHaveLength(4);
    const { comments, relabels } = await session('sam');
    expect(all.sessions[0]).toMatchObject({ id: 's1', comments, relabels });
    expect(comments.length).toBeGreaterThan(0);
  });

  it('goes on where a recording is missing, and says so in the zip', async () => {
    const { zip } = sessionPaths(hub.context.places, 'sam', 's1');
    const kept = await readFile(zip);
    await rm(zip);
    const files = await exported();
    expect(Object.keys(files)).not.toContain('sessions/s1.zip');
    expect(files['student.json']).toBeDefined();
    expect(json(files['manifest.json'])).toMatchObject({
      missing: [{ name: 'sessions/s1.zip', why: 'The hub does not have this file any more.' }],
    });
    await writeFile(zip, kept);
  });

  it('is deleted by the coach who types the name, files and all', async () => {
    const wrong = await send('carl', 'DELETE', '/api/students/sam', { name: 'Sue' });
    expect(wrong.statusCode).toBe(400);
    const done = await send('carl', 'DELETE', '/api/students/sam', { name: 'Sam' });
    expect(done.statusCode).toBe(204);
    const { db, places } = hub.context;
    for (const table of ['session', 'comment', 'plan', 'machine'] as const)
      expect(
        (await db.selectFrom(table).selectAll().execute()).filter((row) =>
          Object.values(row).some((v) => String(v).startsWith('sam')),
        ),
        table,
      ).toEqual([]);
    expect(await readdir(join(places.students))).toEqual([]);
  });
});
