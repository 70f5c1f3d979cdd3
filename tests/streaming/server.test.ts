import { afterEach, describe, expect, it } from 'vitest';
import { warningOf } from '../../src/coaching/warnings.ts';
import { BATCHES_PER_SECOND, type Batch, MAX_UNSEEN } from '../../src/streaming/contract.ts';
import { frame, phase, rehearsal } from '../practice/scripted.ts';
import { type Page, next, openPage, service, wait } from './pages.ts';

const pages: Page[] = [];
const ends: (() => Promise<void>)[] = [];

async function start(...args: Parameters<typeof service>) {
  const running = await service(...args);
  ends.push(running.end);
  return running;
}

function page(url: string): Page {
  const opened = openPage(url);
  pages.push(opened);
  return opened;
}

afterEach(async () => {
  pages.splice(0).forEach((p) => p.disconnect());
  for (const end of ends.splice(0)) await end();
});

const frames = (from: number, to: number): [number, ReturnType<typeof frame>][] =>
  Array.from({ length: Math.round((to - from) * 100) }, (_, i) => {
    const t = from + i / 100;
    return [t, frame(t, t, 30)];
  });

describe('the live stream', () => {
  it('gives a page that comes late everything it needs', async () => {
    const { source, url } = await start([
      [1, phase('address', 1)],
      [2, { kind: 'repetition', others: [], repetition: rehearsal(1) }],
      ...frames(0, 3),
    ]);
    source.packets(3);
    const { view } = await next(page(url), 'snapshot');
    expect(view.phase.phase).toBe('address');
    expect(view.last?.index).toBe(1);
    expect(view.curve.timeS.length).toBeGreaterThan(100);
    expect(view.pose?.thorax).toHaveProperty('w');
  });

  it('sends only what changed', async () => {
    const { source, url } = await start([[5, phase('address', 5)]]);
    source.packets(1);
    const one = page(url);
    await next(one, 'snapshot');
    const batch = next(one, 'batch');
    source.packets(5);
    expect(Object.keys((await batch).sections)).toEqual(['phase']);
  });

  it(`never sends more than ${BATCHES_PER_SECOND} batches in a second`, async () => {
    const { source, url } = await start([
      ...frames(0, 20),
      [10, { kind: 'repetition', others: [], repetition: rehearsal(1) }],
    ]);
    const one = page(url);
    await next(one, 'snapshot');
    const arrivals: number[] = [];
    one.on('batch', ({ sequence }) => {
      arrivals.push(performance.now());
      one.emit('seen', sequence);
    });
    for (let i = 1; i <= 200; i++) {
      source.packets(i / 10, 10);
      await wait(8);
    }
    const most = Math.max(
      ...arrivals.map((t) => arrivals.filter((u) => u >= t && u < t + 950).length),
    );
    expect(most).toBeLessThanOrEqual(BATCHES_PER_SECOND);
    expect(arrivals.length).toBeGreaterThan(3);
  });

  it('passes over a page that does not keep up and then gives it the newest state', async () => {
    const { source, url } = await start(frames(0, 40));
    const slow = page(url);
    const first = await next(slow, 'snapshot');
    slow.emit('seen', first.sequence);
    const got: Batch[] = [];
    slow.on('batch', (batch) => got.push(batch));
    for (let i = 1; i <= 60; i++) {
      source.packets(i / 10, 10);
      await wait(45);
    }
    expect(got.length).toBeLessThanOrEqual(MAX_UNSEEN);
    const again = next(slow, 'snapshot');
    slow.emit('seen', got.at(-1)?.sequence ?? 0);
    expect((await again).view.curve.timeS.at(-1)).toBeCloseTo(6, 1);
  });

  it('does not believe a page that says it has seen what was never sent', async () => {
    const { source, url } = await start(frames(0, 40));
    const page1 = page(url);
    await next(page1, 'snapshot');
    for (const bogus of [1e12, -5, 0.5, '7', null, NaN, Infinity, {}])
      page1.emit('seen', bogus as never);
    const got: Batch[] = [];
    page1.on('batch', (batch) => got.push(batch));
    for (let i = 1; i <= 60; i++) {
      source.packets(i / 10, 10);
      await wait(20);
    }
    await wait(200);
    expect(got.length).toBeGreaterThan(0);
    expect(got.length).toBeLessThanOrEqual(MAX_UNSEEN);
  });

  it('gives every page a sign of life, whether anything changes or not', async () => {
    const { url } = await start([]);
    const one = page(url);
    await next(one, 'snapshot');
    await next(one, 'alive');
    await next(one, 'alive');
  });

  it('refuses what it does not understand with a sentence and goes on', async () => {
    const { url, source } = await start([
      [1, { kind: 'warning', warning: warningOf('missed', 1) }],
    ]);
    source.packets(1);
    const one = page(url);
    await next(one, 'snapshot');
    const send = (value: unknown): Promise<{ ok: boolean; error?: string }> =>
      one.emitWithAck('command', value as never);
    for (const bad of [
      null,
      7,
      'pause',
      [],
      { type: 'format-disk' },
      { type: 'acknowledge' },
      { type: 'acknowledge', id: 'constructor' },
      { type: 'correct', index: 0.5, kind: 'ball' },
      { type: 'pause', extra: 1 },
      JSON.parse('{"type":"undo","__proto__":{"x":1}}'),
    ]) {
      const reply = await send(bad);
      expect(reply.ok, JSON.stringify(bad)).toBe(false);
      expect(reply.error, JSON.stringify(bad)).toMatch(/^[A-Z].*\.$/);
    }
    expect(await send({ type: 'acknowledge', id: 'missed' })).toEqual({ ok: true });
    expect(await send({ type: 'acknowledge', id: 'missed' })).toMatchObject({ ok: false });
    expect(await send({ type: 'undo' })).toMatchObject({ ok: false });
  });

  it.each([
    ['of another site', { origin: 'http://elsewhere.example' }],
    [
      'whose name was made to point here',
      { origin: 'http://elsewhere.example', host: 'elsewhere.example' },
    ],
    ['that says no origin, under another name', { host: 'elsewhere.example' }],
  ])('does not answer a page %s', async (_, extraHeaders) => {
    const { url } = await start([]);
    const { io } = await import('socket.io-client');
    const foreign = io(url, {
      transports: ['websocket'],
      forceNew: true,
      reconnection: false,
      extraHeaders,
    });
    const failed = await new Promise((resolve) => {
      foreign.on('connect', () => resolve(false));
      foreign.on('connect_error', () => resolve(true));
    });
    foreign.disconnect();
    expect(failed).toBe(true);
  });
});
