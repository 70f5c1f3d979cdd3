import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildHub } from '../../src/hub/app.ts';
import { keptSession } from './keptSession.ts';
import { type TestHub, testHub } from './testHub.ts';

let hub: TestHub;
beforeAll(async () => {
  hub = await testHub();
  await hub.context.db
    .insertInto('session')
    .values(keptSession('s1', 'sam', 1))
    .execute();
});
afterAll(() => hub.close());

const codeOf = (answer: { json: () => unknown }): string =>
  (answer.json() as { error: { code: string } }).error.code;

describe('what other sites can do', () => {
  const change = { method: 'PUT', url: '/api/sessions/s1/reviewed', payload: { reviewed: true } };
  it.each<[string, Record<string, string>]>([
    ['another origin', { origin: 'https://elsewhere.example' }],
    ['no origin that can be read', { origin: 'null' }],
    ['another port', { origin: 'http://localhost:81' }],
    ['what the browser calls cross-site', { 'sec-fetch-site': 'cross-site' }],
    ['a sister site', { 'sec-fetch-site': 'same-site' }],
  ])('nothing, from %s, even with cookie and token', async (_name, headers) => {
    const answer = await hub.ask('carl', { ...change, method: 'PUT', headers });
    expect(answer.statusCode).toBe(403);
    expect(codeOf(answer)).toBe('another-site');
  });

  it('the own page may, also where the proxy hands on another host', async () => {
    for (const headers of [
      { origin: 'http://localhost:80', host: 'inside:7411' },
      { origin: 'http://localhost:80' },
    ]) {
      const answer = await hub.ask('carl', { ...change, method: 'PUT', headers });
      expect(answer.statusCode).toBe(204);
    }
  });

  it('cookie alone does not do', async () => {
    const headers = { 'x-csrf-token': '' };
    const answer = await hub.ask('carl', { ...change, method: 'PUT', headers });
    expect(codeOf(answer)).toBe('csrf');
  });
});

describe('headers', () => {
  it('keep answers out of caches and scripts of others out of pages', async () => {
    for (const url of ['/api/me', '/api/nowhere', '/api/setup', '/docs/', '/docs/json']) {
      const { headers } = await hub.ask('carl', { url });
      expect(String(headers['content-security-policy']), url).toMatch(/default-src 'self'/);
      expect(String(headers['content-security-policy']), url).not.toMatch(/unsafe|https?:/);
      expect(headers['x-content-type-options'], url).toBe('nosniff');
      expect(headers['x-frame-options'], url).toBe('DENY');
      if (url.startsWith('/api')) expect(headers['cache-control'], url).toBe('no-store');
      expect(headers['strict-transport-security'], url).toBeUndefined();
    }
  });

  it('with HTTPS: strict transport, and a cookie for this host alone', async () => {
    const settings = { publicUrl: 'https://hub.example.org' };
    const said: string[] = [];
    const { app } = await buildHub({ ...hub.context, settings, say: (s) => said.push(s) });
    const host = 'hub.example.org';
    const password = 'a rather long one';
    const invite = await hub.ask('olga', {
      method: 'POST',
      url: '/api/invites',
      payload: { role: 'coach', name: 'Bram' },
    });
    const code = invite.json<{ url: string }>().url.split('/').at(-1)!;
    const joined = await app.inject({
      method: 'POST',
      url: `/api/invitation/${code}`,
      headers: { host, origin: `https://${host}` },
      payload: { name: 'Bram', login: 'bram', password },
    });
    expect(joined.statusCode).toBe(200);
    expect(joined.headers['strict-transport-security']).toMatch(/^max-age=\d{8}/);
    const cookie = String(joined.headers['set-cookie']);
    expect(cookie).toMatch(/^__Host-stillcatch=[\w-]{43};/);
    for (const part of ['HttpOnly', 'Secure', 'SameSite=Strict', 'Path=/'])
      expect(cookie).toContain(part);
    expect(cookie).not.toContain('Domain');
    await app.close();
  });
});

describe('passwords', () => {
  const change = (next: string) =>
    hub.ask('carl', { method: 'POST', url: '/api/me/password', payload: { current: 'x', next } });
  it.each(['nine char', 'x'.repeat(201)])('%s is refused by its length', async (next) => {
    expect((await change(next)).statusCode).toBe(400);
  });

  it.each(['Password123', 'qwertyuiop', '1111111111', 'fritz12345', 'FRITZfritz'])(
    '%s is refused as one that is tried first',
    async (password) => {
      const made = await hub.ask('carl', {
        method: 'POST',
        url: '/api/invites',
        payload: { role: 'student', name: 'Fritz' },
      });
      const code = made.json<{ url: string }>().url.split('/').at(-1)!;
      const payload = { name: 'Fritz', login: 'fritz', password };
      const url = `/api/invitation/${code}`;
      const refused = await hub.ask(null, { method: 'POST', url, payload });
      expect(refused.statusCode).toBe(400);
      expect(codeOf(refused)).toBe('weak-password');
      const shown = await hub.ask(null, { url });
      expect(shown.statusCode, 'the invitation is still open').toBe(200);
    },
  );
});

describe('guessing', () => {
  it('one name from one address ends after ten tries, and says how long to wait', async () => {
    const statuses: number[] = [];
    const at = async (login: string, remoteAddress: string) =>
      hub.ask(null, {
        method: 'POST',
        url: '/api/login',
        payload: { login, password: 'not the right one' },
        remoteAddress,
      });
    for (let i = 0; i < 6; i++) statuses.push((await at('sue', '10.0.0.1')).statusCode);
    expect(new Set(statuses)).toEqual(new Set([403]));
    for (let i = 0; i < 4; i++) await at('SUE ', '10.0.0.1');
    const late = await at('sue', '10.0.0.1');
    expect(late.statusCode).toBe(429);
    expect(Number(late.headers['retry-after'])).toBeGreaterThan(0);
    expect(late.json()).toMatchObject({ error: { code: 'too-many' } });
    expect((await at('sue', '10.0.0.2')).statusCode, 'from elsewhere').toBe(403);
  });

  it('a forwarded address is not believed without a proxy', async () => {
    const { headers } = await hub.ask(null, {
      url: '/api/setup',
      remoteAddress: '10.0.0.9',
      headers: { 'x-forwarded-for': '1.2.3.4' },
    });
    const { headers: again } = await hub.ask(null, {
      url: '/api/setup',
      remoteAddress: '10.0.0.9',
      headers: { 'x-forwarded-for': '4.3.2.1' },
    });
    expect(Number(again['x-ratelimit-remaining'])).toBe(
      Number(headers['x-ratelimit-remaining']) - 1,
    );
  });
});

const NASTY = [
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  'javascript:alert(1)//',
  '</script><svg onload=alert(1)>',
  "'; DROP TABLE person; --",
  '{{constructor.constructor("alert(1)")()}}',
];

describe('texts', () => {
  it('come back as they were, as JSON only', async () => {
    for (const [i, text] of NASTY.entries()) {
      const comment = { text, index: null, momentS: null, replyTo: null };
      const posts: [string, object][] = [
        ['/api/sessions/s1/comments', comment],
        ['/api/blocks', { title: text, text }],
        ['/api/invites', { role: 'student', name: text }],
        ['/api/students/sam/lessons', { atMs: i + 1, text }],
      ];
      for (const [url, payload] of posts) {
        const answer = await hub.ask('carl', { method: 'POST', url, payload });
        expect(answer.statusCode, `${url} ${answer.body}`).toBeLessThan(300);
      }
    }
    for (const url of ['/api/sessions/s1', '/api/blocks', '/api/invites']) {
      const answer = await hub.ask('carl', { url });
      expect(answer.headers['content-type'], url).toMatch(/^application\/json/);
      for (const text of NASTY)
        expect(answer.body, url).toContain(JSON.stringify(text).slice(1, -1));
    }
  });
});

describe('bodies and addresses that are none', () => {
  const BODIES = [
    '',
    '{',
    'null',
    '[]',
    '"text"',
    '{"__proto__":{"x":1}}',
    '{"constructor":{"prototype":{}}}',
    '{"text":1e999}',
    `{"text":"${'x'.repeat(200_000)}"}`,
    `${'['.repeat(5000)}${']'.repeat(5000)}`,
    '{"name":"\\ud800","login":"\\u0000","password":[]}',
  ];
  const IDS = ['1', '%00', '..%2f..%2fetc', '%F0%9F%98%80', 'x'.repeat(300), "'%20OR%201=1"];

  it('are refused in words, never by a failure inside', async () => {
    const failed: string[] = [];
    for (const { method, url, access } of hub.routes) {
      const who =
        access.who === 'machine'
          ? 'sam:machine'
          : access.who === 'student'
            ? 'sam'
            : access.who === 'owner'
              ? 'olga'
              : 'carl';
      // deletions and leaving would end the actors
      if (method === 'DELETE' || url.startsWith('/api/logout')) continue;
      const addresses = IDS.map((id) => url.replaceAll(/:\w+/g, id));
      const real = url
        .replace(':studentId', 'sam')
        .replace(':sessionId', 's1')
        .replaceAll(/:\w+/g, '1');
      const asked = [
        ...addresses.map((address) => ({ address, payload: '{}' })),
        ...(method === 'GET' ? [] : BODIES.map((payload) => ({ address: real, payload }))),
      ];
      for (const { address, payload } of asked) {
        const answer = await hub.ask(who, {
          method: method as 'POST',
          url: address,
          ...(method !== 'GET' && {
            payload,
            headers: { 'content-type': 'application/json' },
          }),
        });
        if (answer.statusCode >= 500)
          failed.push(`${method} ${address} ${payload.slice(0, 40)}: ${answer.body}`);
      }
    }
    expect(failed).toEqual([]);
  });
});
