import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEFAULT_PLAN } from '../../../src/coaching/plan.ts';
import { type TestHub, testHub } from '../testHub.ts';
import { addPlan, addSession } from './rows.ts';

let hub: TestHub;
beforeAll(async () => {
  hub = await testHub();
  await addPlan(hub, 'sam', 1);
  await addSession(hub, { id: 's1', studentId: 'sam', startedMs: 1 });
});
afterAll(() => hub.close());

const MARKUP = '<script>alert(1)</script>"\'><img src=x onerror=alert(2)>{{7*7}}';
const send = (method: 'POST' | 'PATCH' | 'PUT', url: string, payload: object) =>
  hub.ask('carl', { method, url, payload });

/** Where a coach can write, what is written there, and where it is read. */
const FIELDS: readonly (readonly [string, (text: string) => object, string])[] = [
  ['/api/sessions/s1/comments', (text) => ({ text }), '/api/sessions/s1'],
  ['/api/students/sam/lessons', (text) => ({ atMs: 1, text }), '/api/students/sam'],
  ['/api/blocks', (text) => ({ title: text, text }), '/api/blocks'],
  ['/api/templates', (text) => ({ name: text, plan: DEFAULT_PLAN }), '/api/templates'],
  [
    '/api/students/sam/plans',
    (text) => ({ plan: { ...DEFAULT_PLAN, name: text, note: text }, validFromMs: 1, basedOn: 1 }),
    '/api/students/sam/plans',
  ],
];

describe('texts', () => {
  it('are kept as they were written, as text, and served as JSON that no browser takes for a page', async () => {
    for (const [url, body, readAt] of FIELDS) {
      expect((await send('POST', url, body(MARKUP))).statusCode, url).toBe(201);
      const read = await hub.ask('carl', { url: readAt });
      expect(read.headers['content-type'], url).toMatch(/^application\/json/);
      expect(read.headers['x-content-type-options'], url).toBe('nosniff');
      expect(JSON.stringify(read.json()), url).toContain(JSON.stringify(MARKUP).slice(1, -1));
    }
  });

  it('have an end, are not empty, and come alone', async () => {
    for (const [url, body] of FIELDS) {
      expect((await send('POST', url, body('x'.repeat(20_000)))).statusCode, url).toBe(400);
      expect((await send('POST', url, { ...body('x'), more: 1 })).statusCode, url).toBe(400);
    }
    for (const [url, body] of FIELDS.slice(0, 3))
      expect((await send('POST', url, body('   '))).statusCode, url).toBe(400);
  });

  it('of another coach are neither seen nor changed', async () => {
    expect((await hub.ask('olga', { url: '/api/blocks' })).json()).toEqual([]);
    expect((await hub.ask('olga', { url: '/api/templates' })).json()).toEqual([]);
    const [{ id }] = (await hub.ask('carl', { url: '/api/blocks' })).json<[{ id: string }]>();
    await hub.ask('olga', { method: 'DELETE', url: `/api/blocks/${id}` });
    const put = { method: 'PUT', url: `/api/blocks/${id}` } as const;
    await hub.ask('olga', { ...put, payload: { title: 'hers', text: 'hers' } });
    expect((await hub.ask('carl', { url: '/api/blocks' })).json()).toMatchObject([
      { id, title: MARKUP },
    ]);
  });
});

describe('films of a session', () => {
  it('are ten at most, and other Matroska is none', async () => {
    const film = Buffer.from('1a45dfa3934282847765626d00', 'hex');
    const add = (payload: Buffer) =>
      hub.ask('sam', {
        method: 'POST',
        url: '/api/sessions/s1/clips?name=a',
        headers: { 'content-type': 'video/webm' },
        payload,
      });
    const other = Buffer.from('1a45dfa3934282886d6174726f736b61', 'hex');
    expect((await add(other)).statusCode).toBe(415);
    for (let i = 0; i < 10; i++) expect((await add(film)).statusCode).toBe(201);
    expect((await add(film)).statusCode).toBe(409);
  });
});
