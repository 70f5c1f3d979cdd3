import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import Fastify, { type FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { openStore, type SessionStore } from '../../src/sessions/store/store.ts';
import { receive } from '../../src/streaming/sessionsImport.ts';
import { registerSessionsApi } from '../../src/streaming/sessionsApi.ts';
import { progressView } from '../../src/streaming/sessionsViews.ts';
import type {
  ApiError,
  Progress,
  RepetitionCurves,
  SessionDetail,
  SessionList,
  SessionOverview,
} from '../../src/streaming/sessionsContract.ts';

const RECORDINGS = new URL('../../recordings/', import.meta.url).pathname;
const zip = (name: string): Buffer => readFileSync(join(RECORDINGS, `${name}.zip`));
/** What the simulator made the recording of. */
const kindsOf = (name: string): string[] => {
  const text = readFileSync(join(RECORDINGS, `${name}.expected.json`), 'utf8');
  const { repetitions } = JSON.parse(text) as { repetitions: { kind: string }[] };
  return repetitions.map((r) => r.kind);
};
const count = (kinds: readonly string[], kind: string): number =>
  kinds.filter((k) => k === kind).length;

let app: FastifyInstance;
let store: SessionStore;
const headers = { host: '127.0.0.1:1', 'content-type': 'application/zip' };

async function serve(): Promise<void> {
  store = await openStore(mkdtempSync(join(tmpdir(), 'stillcatch-test-')));
  app = Fastify();
  registerSessionsApi(app, { store, problem: null, folder: store.places.root });
}

const post = (url: string, payload: Buffer | string, more = {}) =>
  app.inject({ method: 'POST', url, payload, headers: { ...headers, ...more } });
const get = (url: string) => app.inject({ url: `/api${url}`, headers: { host: '127.0.0.1:1' } });
const codeOf = (reply: { json(): unknown }): string => (reply.json() as ApiError).error.code;

let right: string;
let left: string;

beforeAll(async () => {
  await serve();
  right = (await post('/api/import', zip('right-mixed'))).json<{ id: string }>().id;
  left = (await post('/api/import', zip('left-mixed'))).json<{ id: string }>().id;
});
afterAll(async () => {
  await app.close();
  await store.close();
  rmSync(store.places.root, { recursive: true, force: true });
});

describe('The list of sessions', () => {
  it('has what was imported, with its figures, marked as simulated', async () => {
    const { sessions, folder } = (await get('/sessions')).json<SessionList>();
    expect(folder).toBe(store.places.root);
    expect(sessions.map((s) => s.id).sort()).toEqual([left, right].sort());
    const truth = kindsOf('right-mixed');
    expect(sessions.find((s) => s.id === right)).toMatchObject({
      simulated: true,
      hand: 'right',
      state: 'complete',
      rehearsals: count(truth, 'rehearsal'),
      balls: count(truth, 'ball'),
      practiceSwings: count(truth, 'practiceSwing'),
      painBefore: null,
    });
  });

  it('counts over sessions in the progress, rehearsals and balls apart', async () => {
    expect((await get('/progress')).json<Progress>()).toMatchObject({
      sessions: [],
      notCounted: [{ notCounted: 'simulated' }, { notCounted: 'simulated' }],
    });
    // the same two as though a person had practised them
    const practised = (await store.list()).map((s) => ({ ...s, simulated: false }));
    const { sessions } = progressView(practised);
    expect(sessions).toHaveLength(2);
    const session = sessions.find((s) => s.id === right)!;
    expect(session.rehearsals.addedFlexionDeg!.count).toBeGreaterThan(0);
    expect(session.balls.holdS).toBeUndefined();
    expect(sessions[0]!.planChanged).toBe(false);
    expect(sessions[0]!.plan!.targets).toEqual(DEFAULT_PLAN.targets);
    expect(sessions[1]!.plan).toBeNull();
    const { analysis } = (await get(`/sessions/${right}`)).json<SessionDetail>();
    expect(session.carryOver).toEqual(analysis!.carryOver);
    expect(session.repetitions).toBe(
      analysis!.repetitions.filter(({ kind }) => kind !== 'practiceSwing').length,
    );
  });
});

describe('One session', () => {
  it('comes with plan, notes and the whole result', async () => {
    const detail = (await get(`/sessions/${left}`)).json<SessionDetail>();
    expect(detail.summary.hand).toBe('left');
    expect(detail.summary).toMatchObject({ simulated: true, notCounted: 'simulated' });
    expect(detail.weekRepetitions).toBeUndefined();
    expect(detail.plan.name).toBe(DEFAULT_PLAN.name);
    expect(detail.notes).toEqual({ note: '', painBefore: null, painAfter: null });
    expect(detail.analysis!.repetitions.map((r) => r.kind)).toEqual(kindsOf('left-mixed'));
  });

  it('has curves around the release whose values are those of the measures', async () => {
    const { analysis } = (await get(`/sessions/${right}`)).json<SessionDetail>();
    const rehearsal = analysis!.repetitions.find((r) => r.kind === 'rehearsal')!;
    const reply = await get(`/sessions/${right}/curves/${rehearsal.index}`);
    const curves = reply.json<RepetitionCurves>();
    expect(curves.alignS).toBe(rehearsal.releaseS);
    const { timeS } = curves;
    expect(timeS[0]!).toBeCloseTo(Math.min(rehearsal.startS - 0.3, rehearsal.releaseS - 1.5), 1);
    expect(timeS.at(-1)! - rehearsal.releaseS).toBeCloseTo(1, 1);
    const lengthS = timeS.at(-1)! - timeS[0]!;
    expect(timeS.length).toBeLessThanOrEqual(lengthS * 104 + 2);
    expect(timeS.length).toBeGreaterThan(lengthS * 90);
    const at = timeS.findIndex((t) => t >= rehearsal.releaseS);
    expect(Math.abs(curves.flexionDeg[at]! - rehearsal.measures.flexionTopDeg!)).toBeLessThan(2);
    for (const column of ['turnDeg', 'leanDeg', 'elevationDeg', 'keptRotationDeg'] as const)
      expect(curves[column]).toHaveLength(timeS.length);
    expect(curves.poses).toHaveLength(120);
    expect(curves.address!.timeS).toBeCloseTo(rehearsal.startS, 1);
    const { w, x, y, z } = curves.poses[0]!.thorax;
    expect(Math.hypot(w, x, y, z)).toBeCloseTo(1, 3);
    expect(reply.body).not.toContain('NaN');
  });

  it('has a small multiple of every repetition, aligned and thin', async () => {
    const { repetitions } = (await get(`/sessions/${right}/overview`)).json<SessionOverview>();
    expect(repetitions.map((r) => r.kind)).toEqual(kindsOf('right-mixed'));
    expect(repetitions.map((r) => r.index)).toEqual(repetitions.map((_, i) => i + 1));
    for (const r of repetitions) {
      expect(r.offsetS.length).toBeLessThanOrEqual(60);
      expect(r.flexionDeg).toHaveLength(r.offsetS.length);
      expect(r.offsetS[0]!).toBeLessThan(0);
      expect(r.offsetS.at(-1)!).toBeGreaterThan(0);
    }
  });

  it.each([
    ['zip', 'application/zip', 'PK'],
    ['csv', 'text/csv', 'index,kind,'],
    ['angles', 'text/csv', 'time_s,'],
    ['sto', 'text/plain', 'DataRate='],
  ])('is given away as %s', async (format, type, begin) => {
    const reply = await get(`/sessions/${right}/export/${format}`);
    expect(reply.statusCode).toBe(200);
    expect(reply.headers['content-type']).toContain(type);
    expect(reply.headers['content-disposition']).toContain('attachment');
    expect(reply.body.startsWith(begin)).toBe(true);
  });

  it('has the same content when its zip is taken in again', async () => {
    const { rawPayload } = await get(`/sessions/${right}/export/zip`);
    const again = await post('/api/import', rawPayload);
    expect(again.statusCode).toBe(409);
    expect(codeOf(again)).toBe('exists');
  });
});

describe('The answers for a page', () => {
  const cached = (id: string): boolean =>
    existsSync(join(store.places.root, 'cache', id, 'overview.json'));

  it(
    'are ready soon after an import, and once a practice is kept',
    { timeout: 600_000 },
    async () => {
      await expect.poll(() => cached(right), { timeout: 240_000 }).toBe(true);
      rmSync(join(store.places.root, 'cache'), { recursive: true });
      const other = Fastify();
      let tell: (id: string) => void = () => undefined;
      registerSessionsApi(other, {
        store,
        problem: null,
        folder: store.places.root,
        onSaved: (hear) => void (tell = hear),
      });
      tell(left);
      tell('nosuch');
      await expect.poll(() => cached(left), { timeout: 240_000 }).toBe(true);
      await other.close();
    },
  );
});

describe('Deleting', () => {
  it('takes a session out of the list, and can be undone', async () => {
    const url = `/api/sessions/${left}`;
    const own = { host: '127.0.0.1:1', origin: 'http://127.0.0.1:1' };
    expect((await app.inject({ method: 'DELETE', url, headers: own })).statusCode).toBe(204);
    expect((await get(`/sessions/${left}`)).statusCode).toBe(404);
    const deleted = (await get('/sessions?deleted=true')).json<SessionList>().sessions;
    expect(deleted.map((s) => s.id)).toEqual([left]);
    const undo = await app.inject({ method: 'POST', url: `${url}/restore`, headers: own });
    expect(undo.statusCode).toBe(204);
    expect((await get(`/sessions/${left}`)).statusCode).toBe(200);
  });

  it('is refused to the page of another site', async () => {
    for (const foreign of [
      { origin: 'https://evil.example' },
      { origin: 'null' },
      { origin: 'http://127.0.0.1:1', 'sec-fetch-site': 'cross-site' },
    ]) {
      const reply = await app.inject({
        method: 'DELETE',
        url: `/api/sessions/${left}`,
        headers: { host: '127.0.0.1:1', ...foreign },
      });
      expect(reply.statusCode).toBe(403);
    }
    expect((await get(`/sessions/${left}`)).statusCode).toBe(200);
  });
});

describe('What is asked wrongly', () => {
  it.each([
    ['/sessions/..%2f..%2fetc', 400],
    ['/sessions/%2e%2e', 404],
    ['/sessions/a%00b', 400],
    [`/sessions/${'a'.repeat(65)}`, 400],
    ['/sessions/nosuch', 404],
    ['/sessions/nosuch/overview', 404],
    ['/sessions/nosuch/export/zip', 404],
    ['/nowhere', 404],
    ['/sessions?deleted=perhaps', 400],
  ])('GET /api%s is %i, in words', async (url, status) => {
    const reply = await get(url);
    expect(reply.statusCode).toBe(status);
    expect(reply.json<ApiError>().error.message).toMatch(/^[A-Z].*\.$/);
  });

  it('a repetition that is none is told from one that does not exist', async () => {
    expect((await get(`/sessions/${right}/curves/0`)).statusCode).toBe(400);
    expect((await get(`/sessions/${right}/curves/x`)).statusCode).toBe(400);
    expect((await get(`/sessions/${right}/curves/9999`)).statusCode).toBe(404);
    expect((await get(`/sessions/${right}/export/exe`)).statusCode).toBe(400);
  });

  it('a file that is no session is refused with a sentence, and nothing is left', async () => {
    for (const [payload, status] of [
      ['not a zip at all', 400],
      [zip('right-mixed').subarray(0, 5000), 400],
      ['', 400],
    ] as const) {
      const reply = await post('/api/import', payload);
      expect(reply.statusCode).toBe(status);
      expect(reply.json<ApiError>().error.message).toMatch(/^[A-Z].*\.$/);
    }
    const text = await post('/api/import', '{}', { 'content-type': 'application/json' });
    expect(text.statusCode).toBe(415);
    const large = await post('/api/import', 'x', { 'content-length': String(2 ** 27) });
    expect(large.statusCode).toBe(413);
    expect((await get('/sessions')).json<SessionList>().sessions).toHaveLength(2);
  });

  it('a file that grows too large on the way is cut off', async () => {
    const path = join(store.places.root, 'upload');
    const sent = receive(Readable.from([Buffer.alloc(8), Buffer.alloc(8)]), path, 10);
    await expect(sent).rejects.toMatchObject({ status: 413, code: 'too-large' });
  });

  it('a session that is being recorded is not taken apart', async () => {
    const { id, writer } = await store.begin({
      subject: 'me',
      hand: 'right',
      plan: DEFAULT_PLAN,
      startedAt: new Date(),
    });
    expect(codeOf(await get(`/sessions/${id}/overview`))).toBe('recording');
    expect(codeOf(await get(`/sessions/${id}/export/zip`))).toBe('recording');
    const detail = (await get(`/sessions/${id}`)).json<SessionDetail>();
    expect(detail).toMatchObject({ summary: { state: 'recording' }, analysis: null });
    const remove = { method: 'DELETE', url: `/api/sessions/${id}`, headers } as const;
    expect((await app.inject(remove)).statusCode).toBe(409);
    await writer.close();
  });

  it('where nothing can be kept, everything says why', async () => {
    const closed = Fastify();
    registerSessionsApi(closed, { store: null, problem: 'The disk is read-only.', folder: '/x' });
    const reply = await closed.inject({ url: '/api/sessions' });
    expect(reply.statusCode).toBe(503);
    expect(reply.json<ApiError>().error.message).toBe('The disk is read-only.');
  });
});

it('leaves nothing half taken in behind', () => {
  expect(readdirSync(store.places.sessions).filter((n) => n.includes('.'))).toEqual([]);
});

describe('The note and the pain of a session', () => {
  const change = (id: string, payload: unknown) =>
    app.inject({
      method: 'PATCH',
      url: `/api/sessions/${id}/notes`,
      payload: JSON.stringify(payload),
      headers: { host: '127.0.0.1:1', 'content-type': 'application/json' },
    });

  it('can be changed afterwards; what is left out stays', async () => {
    expect((await change(left, { note: 'windy', painAfter: 2 })).statusCode).toBe(204);
    expect((await change(left, { painBefore: 1 })).statusCode).toBe(204);
    const detail = (await get(`/sessions/${left}`)).json<SessionDetail>();
    expect(detail.notes).toEqual({ note: 'windy', painBefore: 1, painAfter: 2 });
  });

  it('are refused in words where they are none, and nothing changes', async () => {
    for (const [wrong, words] of [
      [{ painAfter: 11 }, /Pain after is a whole number from 0 to 10/],
      [{ painBefore: 2.5 }, /Pain before is a whole number/],
      [{ note: 'x'.repeat(2001) }, /2000 characters at most/],
      [{ name: 'x' }, /Only note, painBefore and painAfter/],
      [[], /Only note/],
    ] as const) {
      const reply = await change(left, wrong);
      expect(reply.statusCode).toBe(400);
      expect(reply.json<ApiError>().error.message).toMatch(words);
    }
    expect((await change('nosuch', { note: '' })).statusCode).toBe(404);
    const detail = (await get(`/sessions/${left}`)).json<SessionDetail>();
    expect(detail.notes.painAfter).toBe(2);
  });
});
