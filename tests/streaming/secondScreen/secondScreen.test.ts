import { afterEach, describe, expect, it } from 'vitest';
import type { AnalysisOutput } from '../../../src/analysis/contract.ts';
import { NOTHING_DONE } from '../../../src/coaching/notCounted.ts';
import { warningOf } from '../../../src/coaching/warnings.ts';
import { mergeBatch } from '../../../src/dashboard/feed/merge.ts';
import { buildStudentApp } from '../../../src/main/studentApp.ts';
import type { PracticeView } from '../../../src/streaming/contract.ts';
import { LIVE_ONLY } from '../../../src/streaming/secondScreen/liveOnly.ts';
import { CODE_HOLDS_S, CODE_TRIES } from '../../../src/streaming/secondScreenContract.ts';
import { ball, frame, phase, rehearsal } from '../../practice/scripted.ts';
import { type Page, openPage, wait } from '../pages.ts';
import {
  ADDRESS,
  SECRETS,
  ask,
  closed,
  cookieOf,
  letIn,
  originOf,
  practiceOf,
  screenAt,
  typeCode,
  watch,
} from './screen.ts';

const ends: (() => unknown)[] = [];
afterEach(async () => {
  for (const end of ends.splice(0).reverse()) await end();
});

const SCRIPT: [number, AnalysisOutput][] = [
  [1, phase('address', 1)],
  [2, phase('top', 2, 0.4)],
  [2.5, { kind: 'repetition', repetition: rehearsal(1), others: [] }],
  [3, { kind: 'repetition', repetition: ball(2), others: [] }],
  [3.2, { kind: 'warning', warning: warningOf('missed', 3.2) }],
  [3.5, frame(3.5, 20, 10)],
  [4, phase('waiting', 4)],
];

async function start(address = ADDRESS) {
  const { source, practice, host } = practiceOf(SCRIPT);
  const { screen, clock } = screenAt(address, host);
  practice.start();
  ends.push(
    () => practice.stop(),
    () => screen.switchOff(),
  );
  await screen.switchOn(address);
  const url = screen.view().on!.url;
  return { source, practice, host, screen, clock, url, code: screen.view().on!.code.digits! };
}

/** A screen that was let in. */
async function pairedAt(running: Awaited<ReturnType<typeof start>>) {
  running.screen.newCode();
  const answer = await typeCode(running.url, running.screen.view().on!.code.digits!);
  expect(answer.status).toBe(204);
  return { answer, headers: { cookie: cookieOf(answer), origin: originOf(running.url) } };
}

function follow(page: Page): () => PracticeView | null {
  let view: PracticeView | null = null;
  page.on('snapshot', (s) => {
    view = s.view;
    page.emit('seen', s.sequence);
  });
  page.on('batch', (batch) => {
    if (view !== null) view = mergeBatch(view, batch);
    page.emit('seen', batch.sequence);
  });
  ends.push(() => page.disconnect());
  return () => view;
}

const refusedConnection = (url: string): Promise<boolean> =>
  ask(url).then(
    () => false,
    (error: NodeJS.ErrnoException) => error.code === 'ECONNREFUSED',
  );

describe('a second screen that is off', () => {
  it('does not listen before it is switched on, nor after it was switched off', async () => {
    const { host } = practiceOf([]);
    const { screen } = screenAt(ADDRESS, host);
    expect(screen.view().on).toBeNull();
    await screen.switchOn(ADDRESS);
    const { url } = screen.view().on!;
    expect((await ask(url)).status).toBe(200);
    await screen.switchOff();
    expect(screen.view().on).toBeNull();
    expect(await refusedConnection(url)).toBe(true);
    expect(() => screen.newCode()).toThrow('switched off');
  });

  it('is not switched on at an address that was not offered', async () => {
    const { host } = practiceOf([]);
    const { screen } = screenAt(ADDRESS, host);
    for (const other of ['0.0.0.0', '127.0.0.3', '::', '203.0.113.9'])
      await expect(screen.switchOn(other)).rejects.toThrow('does not have that address');
    expect(screen.view().on).toBeNull();
  });

  it('ends its sockets at once', async () => {
    const running = await start();
    const { headers } = await pairedAt(running);
    const page = watch(running.url, headers);
    expect(await letIn(page)).toBe(true);
    const ended = closed(page);
    await running.screen.switchOff();
    await ended;
    expect(await refusedConnection(running.url)).toBe(true);
    await running.screen.switchOn(ADDRESS);
    const again = await ask(`${running.screen.view().on!.url}pair`, { headers });
    expect(again.status).toBe(401);
  });
});

describe('what a second screen serves', () => {
  it('is its page, file by file, with the headers of our pages', async () => {
    const { url } = await start();
    const page = await ask(url);
    expect(page.body).toBe('watch.html');
    const policy = String(page.headers['content-security-policy']);
    expect(policy).toContain("script-src 'self'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(page.headers['x-content-type-options']).toBe('nosniff');
    for (const file of ['assets/watch.js', 'assets/watch.css', 'assets/shared.js'])
      expect((await ask(`${url}${file}`)).body, file).toBe(file);
    for (const other of [
      'assets/index.js',
      'index.html',
      'hub.html',
      'watch.html',
      '.vite/manifest.json',
      'assets/../index.html',
      '..%2findex.html',
      'assets/',
    ])
      expect((await ask(`${url}${other}`)).status, other).toBe(404);
  });

  it('is nothing of what the practice’s own service answers to', async () => {
    const running = await start();
    const { headers } = await pairedAt(running);
    const routes = await mainRoutes(running);
    expect(routes.length).toBeGreaterThan(20);
    for (const known of ['GET /api/sessions', 'POST /api/second-screen/on', 'GET /api/coach'])
      expect(routes).toContain(known);
    for (const route of routes) {
      const [method, path = ''] = route.split(' ');
      if (path === '/') continue;
      const address = new URL(path.replaceAll(/:\w+|\*/g, 'x'), running.url).href;
      const answer = await ask(address, { method: method!, headers });
      expect(answer.status, route).toBe(404);
    }
  });
});

/** Every method and path of the main service, from its own list, so that a new one is tried too. */
async function mainRoutes({ host, screen }: Awaited<ReturnType<typeof start>>): Promise<string[]> {
  const app = await buildStudentApp({
    host,
    now: () => performance.now(),
    sessions: { store: null, problem: null, folder: '' },
    plans: {
      coach: () => null,
      own: () => [],
      write: () => undefined,
      week: async () => NOTHING_DONE,
    },
    secondScreen: { ...screen, switchOff: async () => undefined },
  });
  await app.ready();
  const parts: string[] = [];
  const routes = app
    .printRoutes({ commonPrefix: false })
    .split('\n')
    .flatMap((line) => {
      const found = /^([│ ]*)[├└]── (\S*)(?: \((.*)\))?/.exec(line);
      if (found === null) return [];
      const [, indent = '', part = '', methods] = found;
      parts.length = indent.length / 4;
      parts.push(part);
      const path = parts.join('');
      return (methods ?? '').split(', ').flatMap((m) => (m === '' ? [] : `${m} ${path}`));
    });
  await app.close();
  return routes;
}

describe('pairing', () => {
  it('gives a cookie that scripts do not read and other sites do not send', async () => {
    const { answer, headers } = await pairedAt(await start());
    const set = answer.headers['set-cookie']?.[0] ?? '';
    expect(set).toContain('HttpOnly');
    expect(set).toContain('SameSite=Strict');
    expect(headers.cookie.length).toBeGreaterThan(50);
  });

  it('is tried five times with one code, then asks for a new one', async () => {
    const { url, code, screen } = await start();
    const wrong = code === '123456' ? '654321' : '123456';
    for (let i = 0; i < CODE_TRIES; i++) {
      const answer = await typeCode(url, wrong);
      expect(answer.status).toBe(403);
      expect(answer.body).toContain('wrong-code');
      expect(answer.headers['set-cookie']).toBeUndefined();
    }
    const late = await typeCode(url, code);
    expect([late.status, late.headers['set-cookie']]).toEqual([409, undefined]);
    expect(screen.view().on!.code).toMatchObject({ state: 'spent', digits: null });
    screen.newCode();
    expect((await typeCode(url, screen.view().on!.code.digits!)).status).toBe(204);
  });

  it('is over once the code was used or has run out', async () => {
    const { url, code, screen, clock } = await start();
    expect((await typeCode(url, code)).status).toBe(204);
    expect((await typeCode(url, code)).status).toBe(409);
    screen.newCode();
    const next = screen.view().on!.code.digits!;
    clock.aheadMs += CODE_HOLDS_S * 1000 + 1;
    expect((await typeCode(url, next)).status).toBe(409);
    expect(screen.view().on!.code.state).toBe('expired');
  });

  it.each(['', '{}', '{"code":7}', '{"code":"1","x":1}', '[]', `{"code":"${'1'.repeat(300)}"}`])(
    'does not count %s as a try',
    async (body) => {
      const { url, code } = await start();
      for (let i = 0; i <= CODE_TRIES; i++) {
        const headers = { origin: originOf(url), 'content-type': 'application/json' };
        const { status } = await ask(`${url}pair`, { method: 'POST', headers, body });
        expect([400, 413]).toContain(status);
      }
      expect((await typeCode(url, code)).status).toBe(204);
    },
  );
});

describe('a page of another name or another site', () => {
  it('gets nothing', async () => {
    const running = await start();
    const { url } = running;
    const { headers } = await pairedAt(running);
    const { port } = new URL(url);
    for (const host of ['evil.example', `evil.example:${port}`, `localhost:${port}`, ADDRESS]) {
      expect((await ask(url, { headers: { host } })).status, host).toBe(421);
      expect((await ask(`${url}pair`, { headers: { ...headers, host } })).status, host).toBe(421);
      expect(await letIn(watch(url, { ...headers, host })), host).toBe(false);
    }
    for (const origin of ['http://evil.example', `http://127.0.0.1:${port}`, 'null']) {
      expect((await typeCode(url, '000000', { origin })).status, origin).toBe(403);
      expect(await letIn(watch(url, { ...headers, origin })), origin).toBe(false);
    }
    expect(await letIn(watch(url, { cookie: headers.cookie }))).toBe(false);
    expect(await letIn(watch(url, headers))).toBe(true);
  });

  it('is not let in without a token, nor with a wrong one', async () => {
    const running = await start();
    const origin = originOf(running.url);
    expect(await letIn(watch(running.url, { origin }))).toBe(false);
    expect(await letIn(watch(running.url, { origin, cookie: 'stillcatch-screen=x' }))).toBe(false);
  });

  it('is kept out at an IPv6 address too', async () => {
    const running = await start('::1');
    const { headers } = await pairedAt(running);
    expect((await ask(running.url)).status).toBe(200);
    expect((await ask(running.url, { headers: { host: 'localhost' } })).status).toBe(421);
    const page = watch(running.url, headers);
    expect(await letIn(page)).toBe(true);
    page.disconnect();
  });
});

describe('the live view of a second screen', () => {
  it('is what the page of the practice has, less what is nobody else’s business', async () => {
    const running = await start();
    const { source, host } = running;
    const app = await buildStudentApp({ host, now: () => performance.now() });
    await app.listen({ host: '127.0.0.1', port: 0 });
    ends.push(() => app.close());
    const { port } = app.server.address() as { port: number };
    const main = follow(openPage(`http://127.0.0.1:${port}`));
    const { headers } = await pairedAt(running);
    const page = watch(running.url, headers);
    const raw: string[] = [];
    page.onAny((...message) => raw.push(JSON.stringify(message)));
    const second = follow(page);
    await letIn(page);
    for (const t of [1, 2, 2.5, 3, 3.2, 3.5, 4]) {
      source.packets(t);
      await wait(60);
    }
    await expect.poll(() => second()?.phase.phase).toBe('waiting');
    await expect.poll(() => main()?.phase.phase).toBe('waiting');
    const { sensors, ...shown } = second()!;
    const { sensors: own, ...rest } = LIVE_ONLY.show(main()!);
    expect(shown).toEqual(rest);
    // Ages are told at another instant.
    expect(sensors.map((s) => s.sensor)).toEqual(own.map((s) => s.sensor));
    expect(shown).toMatchObject({
      last: { kind: 'ball', index: 2 },
      ledger: { rehearsals: 1, balls: 1 },
      warnings: [{ id: 'missed' }],
      person: { painBefore: null, lastSession: null },
    });
    for (const secret of SECRETS) expect(raw.join('\n'), secret).not.toContain(secret);
  });

  it.each([
    ['command', { type: 'finish' }],
    ['desk', { type: 'open' }],
    ['snapshot', {}],
  ])('hangs up on a screen that sends "%s", and does nothing', async (event, value) => {
    const running = await start();
    running.source.packets(1);
    const { headers } = await pairedAt(running);
    const page = watch(running.url, headers);
    expect(await letIn(page)).toBe(true);
    const ended = closed(page);
    page.emit(event as 'command', value as never, () => expect.unreachable());
    await ended;
    expect(running.practice.view().stage).toBe('practice');
  });

  it('hangs up on a screen that sends too much', async () => {
    const running = await start();
    const { headers } = await pairedAt(running);
    const page = watch(running.url, headers);
    expect(await letIn(page)).toBe(true);
    const ended = closed(page);
    page.emit('seen', 'x'.repeat(5000) as never);
    await ended;
  });

  it('ends with the screen, one or all of them', async () => {
    const running = await start();
    const { screen, url } = running;
    const [a, b] = [await pairedAt(running), await pairedAt(running)];
    const [one, two] = [watch(url, a.headers), watch(url, b.headers)];
    expect(await Promise.all([letIn(one), letIn(two)])).toEqual([true, true]);
    const { screens } = screen.view().on!;
    expect(screens.map((s) => [s.address, s.watching])).toEqual([
      ['127.0.0.1', true],
      ['127.0.0.1', true],
    ]);
    const ended = closed(one);
    screen.end(screens[0]!.id);
    await ended;
    expect(two.connected).toBe(true);
    expect(await letIn(watch(url, a.headers))).toBe(false);
    expect((await ask(`${url}pair`, a)).status).toBe(401);
    expect((await ask(`${url}pair`, b)).status).toBe(204);
    const both = closed(two);
    screen.end(null);
    await both;
    expect(screen.view().on!.screens).toEqual([]);
  });
});

describe('the switch on the student’s own page', () => {
  it('turns on and off, and answers no other site', async () => {
    const { host } = practiceOf([]);
    const { screen } = screenAt(ADDRESS, host);
    const app = await buildStudentApp({
      host,
      now: () => performance.now(),
      secondScreen: screen,
    });
    const send = (method: 'GET' | 'POST' | 'DELETE', path: string, more = {}) =>
      app.inject({
        method,
        url: `/api/second-screen${path}`,
        headers: { host: 'localhost:1', ...more },
        ...(path === '/on' && { payload: { address: ADDRESS } }),
      });
    expect((await send('GET', '')).json()).toMatchObject({ on: null });
    expect((await send('POST', '/on', { origin: 'http://evil.example' })).statusCode).toBe(403);
    expect((await send('POST', '/code')).statusCode).toBe(409);
    const on = (await send('POST', '/on')).json().on;
    expect(on).toMatchObject({ address: ADDRESS, reachable: true, screens: [] });
    expect(on.qr.length).toBeGreaterThan(20);
    expect((await send('POST', '/on')).statusCode).toBe(409);
    expect((await send('POST', '/code')).json().on.code.digits).not.toBe(on.code.digits);
    expect((await send('DELETE', '/screens')).statusCode).toBe(200);
    expect((await send('DELETE', '/screens/x')).statusCode).toBe(200);
    await app.close();
    expect(await refusedConnection(on.url)).toBe(true);
  });
});
