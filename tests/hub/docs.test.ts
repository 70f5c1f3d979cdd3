import { Ajv } from 'ajv';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { ANSWERS } from '../../src/hub/answers.ts';
import type { HubSession } from '../../src/streaming/hubContract/review.ts';
import { type TestHub, testHub } from './testHub.ts';
import { SESSION, sessionsOf, upload, uploadUrl } from './uploads/sending.ts';

let hub: TestHub;
beforeAll(async () => {
  hub = await testHub();
});
afterAll(() => hub.close());

interface Operation {
  readonly requestBody?: unknown;
  readonly tags?: readonly string[];
  readonly description?: string;
  readonly responses: Readonly<
    Record<string, { content?: Record<string, { schema: Record<string, unknown> }> }>
  >;
}

interface Described {
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
}

describe('the description of the API', () => {
  it('names every route, with the bodies that are checked', async () => {
    const answer = await hub.ask(null, { url: '/docs/json' });
    expect(answer.statusCode).toBe(200);
    const { paths } = answer.json<Described>();
    for (const { method, url } of hub.routes) {
      const path = url.replaceAll(/:(\w+)/g, '{$1}');
      const described = paths[path]?.[method.toLowerCase()];
      expect(described?.tags, `${method} ${url}`).toHaveLength(1);
      expect(described?.description, `${method} ${url}`).toMatch(/\.$/);
      expect(JSON.stringify(described?.responses['4XX']), `${method} ${url}`).toMatch(
        /"code".*"message"/,
      );
    }
    expect(paths['/api/login']?.['post']?.requestBody).toBeDefined();
  });

  it('is shown as a page that takes no script from elsewhere', async () => {
    const page = await hub.ask(null, { url: '/docs/' });
    expect(page.statusCode).toBe(200);
    expect(page.headers['content-security-policy']).not.toMatch(/script-src[^;]*unsafe-inline/);
  });

  it('describes what is really answered, field for field', async () => {
    await upload(hub, 'sam:machine', 'a1', SESSION);
    const { id } = (await sessionsOf(hub, 'sam'))[0]!;
    const session = `/api/sessions/${id}`;
    await vi.waitFor(
      async () =>
        expect(
          (await hub.ask('carl', { url: session })).json<HubSession>().analysis,
        ).not.toBeNull(),
      { timeout: 240_000, interval: 100 },
    );
    const plan = { plan: DEFAULT_PLAN, validFromMs: 0, basedOn: 0 };
    const relabel = { method: 'PUT', url: `${session}/relabels/1`, payload: { kind: 'ignore' } };
    expect((await hub.ask('carl', relabel as never)).statusCode).toBe(204);
    const lesson = { atMs: 5, text: 'Holding.' };
    const url = '/api/students/sam/lessons';
    expect((await hub.ask('carl', { method: 'POST', url, payload: lesson })).statusCode).toBe(201);
    const asked = [
      ['POST', '/api/students/:studentId/plans', '/api/students/sam/plans', 'carl', plan],
      ['POST', '/api/sessions/:sessionId/comments', `${session}/comments`, 'carl', { text: 'Hm.' }],
      ['GET', '/api/students', '/api/students', 'carl'],
      ['GET', '/api/students/:studentId', '/api/students/sam', 'carl'],
      ['GET', '/api/students/:studentId/plans', '/api/students/sam/plans', 'sam'],
      ['GET', '/api/students/:studentId/sessions', '/api/students/sam/sessions', 'sam'],
      ['GET', '/api/students/:studentId/progress', '/api/students/sam/progress', 'carl'],
      ['GET', '/api/sessions/:sessionId', session, 'carl'],
      ['GET', '/api/machine/inbox', '/api/machine/inbox', 'sam:machine'],
      ['GET', '/api/machine/uploads/:clientId', uploadUrl('a1'), 'sam:machine'],
    ] as const;
    const { paths } = (await hub.ask(null, { url: '/docs/json' })).json<Described>();
    for (const [method, address, at, who, payload] of asked) {
      const described = paths[address.replaceAll(/:(\w+)/g, '{$1}')]?.[method.toLowerCase()];
      const schema = described?.responses['2XX']?.content?.['application/json']?.schema;
      expect(schema, `${method} ${address}`).toBeDefined();
      const answer = await hub.ask(who, { method, url: at, ...(payload && { payload }) });
      expect(answer.statusCode, `${method} ${at}`).toBeLessThan(300);
      const validate = new Ajv({ strict: false, validateFormats: false }).compile(schema!);
      validate(answer.json());
      expect(validate.errors, `${method} ${at}`).toBeNull();
    }
    const seen = asked.map(([method, address]) => `${method} ${address}`);
    const states = ['PUT', 'PATCH'].map((method) => `${method} /api/machine/uploads/:clientId`);
    expect([...seen, ...states].sort()).toEqual(Object.keys(ANSWERS).sort());
  });
});
