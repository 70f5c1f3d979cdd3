import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
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

  it('the own page may, also where the proxy on this computer hands on its own host', async () => {
    for (const headers of [
      { origin: 'http://localhost:80', host: '127.0.0.1:7411' },
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

  it('answers to its own names only', async () => {
    const settings = { publicUrl: 'https://hub.example.org' };
    const { app } = await buildHub({ ...hub.context, settings });
    for (const url of ['/api/setup', '/', '/openapi.json'])
      for (const host of ['elsewhere.example', 'hub.example.org.elsewhere.example', '127.0.0.2']) {
        const reply = await app.inject({ url, headers: { host } });
        expect(reply.statusCode, `${url} of ${host}`).toBe(421);
        expect(reply.body).toContain('https://hub.example.org');
      }
    for (const host of ['hub.example.org', 'Hub.Example.org', 'localhost:7411', '[::1]'])
      expect((await app.inject({ url: '/api/setup', headers: { host } })).statusCode, host).toBe(
        200,
      );
    await app.close();
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
    for (let i = 0; i < 5; i++) statuses.push((await at('sue', '10.0.0.1')).statusCode);
    expect(new Set(statuses)).toEqual(new Set([403]));
    for (let i = 0; i < 5; i++) await at('SUE ', '10.0.0.1');
    const late = await at('sue', '10.0.0.1');
    expect(late.statusCode).toBe(429);
    expect(Number(late.headers['retry-after'])).toBeGreaterThan(0);
    expect(late.json()).toMatchObject({ error: { code: 'too-many' } });
    expect((await at('tom', '10.0.0.2')).statusCode, 'another name from elsewhere').toBe(403);
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

/** Whoever the route is for. */
const actorFor = (who: string): string | null =>
  ({ anyone: null, machine: 'sam:machine', student: 'sam', owner: 'olga' })[who] ??
  (who === 'anyone' ? null : 'carl');

const realAddress = (url: string): string =>
  url
    .replace(':studentId', 'sam')
    .replace(':sessionId', 's1')
    .replace(':code', 'x'.repeat(43))
    .replaceAll(/:\w+/g, '1');

describe('a body of a kind that the route does not take', () => {
  const SAID: Readonly<Record<string, RegExp>> = {
    'POST /api/students/:studentId/import': /^Send the session as a \.zip/,
    'POST /api/sessions/:sessionId/clips': /^A film is sent as mp4 .* or webm/,
    'PATCH /api/machine/uploads/:clientId': /as bytes \(application\/octet-stream\)/,
  };

  it('is refused with what that route takes', async () => {
    await hub.context.db
      .insertInto('clip')
      .values({
        id: '1',
        sessionId: 's1',
        byId: 'carl',
        name: 'x',
        type: 'video/mp4',
        bytes: 1,
        createdMs: 1,
        startS: null,
        view: null,
      })
      .execute();
    for (const { method, url, access } of hub.routes) {
      if (method === 'GET') continue;
      const answer = await hub.ask(actorFor(access.who), {
        method: method as 'POST',
        url: realAddress(url),
        headers: { 'content-type': 'text/plain', 'upload-offset': '0' },
        payload: 'plain words',
      });
      if ([401, 403, 404].includes(answer.statusCode)) continue;
      const { message } = answer.json<{ error: { message: string } }>().error;
      expect(answer.statusCode, `${method} ${url}: ${message}`).toBe(415);
      expect(message, `${method} ${url}`).toMatch(
        SAID[`${method} ${url}`] ?? /^Send this as JSON \(application\/json\)\.$/,
      );
    }
  });
});

interface FieldSchema {
  readonly type?: string;
  readonly pattern?: string;
  readonly required?: readonly string[];
  readonly anyOf?: readonly FieldSchema[];
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly maxLength?: number;
  readonly properties?: Readonly<Record<string, FieldSchema>>;
}

/** What takes no markup by its pattern, and what is never shown. */
const isOfAForm = (name: string, { pattern }: FieldSchema): boolean =>
  (pattern !== undefined && !new RegExp(pattern, 'u').test('<script>')) ||
  /^(password|current|next|code)$/.test(name);

interface Operations {
  readonly paths: Readonly<
    Record<
      string,
      Readonly<
        Record<
          string,
          { requestBody?: { content: Readonly<Record<string, { schema: FieldSchema }>> } }
        >
      >
    >
  >;
}

const SCRIPT = '<script>alert(1)</script>"\'<img src=x onerror=alert(2)>';

/** Something that fits a field: markup where any text does. */
function fitting(name: string, field: FieldSchema): unknown {
  if (name === 'plan') return { ...DEFAULT_PLAN, name: SCRIPT, note: SCRIPT };
  if (field.anyOf !== undefined) return fitting(name, field.anyOf.at(-1) ?? {});
  if (field.const !== undefined) return field.const;
  if (field.enum !== undefined) return field.enum.at(-1);
  if (field.type === 'boolean') return true;
  if (field.type !== 'string') return 1;
  return isOfAForm(name, field) ? 'sam' : SCRIPT.slice(0, field.maxLength);
}

describe('every text field of every route', () => {
  it('keeps markup as text: the fields are those of the schemas, the answers of all routes are looked at', async () => {
    const { paths } = (await hub.ask(null, { url: '/docs/json' })).json<Operations>();
    const who = new Map(hub.routes.map((r) => [`${r.method} ${r.url}`, r.access.who]));
    const kept: string[] = [];
    for (const [path, operations] of Object.entries(paths))
      for (const [method, { requestBody }] of Object.entries(operations)) {
        const schema = requestBody?.content['application/json']?.schema;
        if (schema === undefined || method === 'delete') continue;
        const url = path.replaceAll(/\{(\w+)\}/g, ':$1');
        const fields = Object.entries(schema.properties ?? {});
        const asked = fields.filter(([name]) => schema.required?.includes(name) || name === 'name');
        const answer = await hub.ask(actorFor(who.get(`${method.toUpperCase()} ${url}`) ?? ''), {
          method: method.toUpperCase() as 'POST',
          url: realAddress(url),
          payload: Object.fromEntries(asked.map(([name, field]) => [name, fitting(name, field)])),
        });
        expect(answer.statusCode, `${method} ${path}: ${answer.body}`).toBeLessThan(500);
        for (const [name, field] of asked)
          if (fitting(name, field) === SCRIPT.slice(0, field.maxLength)) {
            expect(field.maxLength, `${path} ${name} has an end`).toBeDefined();
            if (answer.statusCode < 300) kept.push(`${method} ${path} ${name}`);
          }
      }
    for (const field of [
      'post /api/blocks title',
      'post /api/invites name',
      'post /api/sessions/{sessionId}/comments text',
      'post /api/students/{studentId}/lessons text',
      'patch /api/students/{studentId} name',
      'post /api/templates name',
    ])
      expect(kept).toContain(field);
    let seen = 0;
    for (const { method, url, access } of hub.routes) {
      if (method !== 'GET') continue;
      const answer = await hub.ask(actorFor(access.who), { url: realAddress(url) });
      expect(answer.headers['x-content-type-options'], url).toBe('nosniff');
      if (!answer.body.includes('<script>')) continue;
      seen += 1;
      expect(answer.headers['content-type'], url).toMatch(/^application\/(json|zip)/);
    }
    expect(seen).toBeGreaterThan(5);
    const rename = { method: 'PATCH', url: '/api/students/sam', payload: { name: 'Sam' } } as const;
    await hub.ask('carl', rename);
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
