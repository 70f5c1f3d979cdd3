import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type TestHub, testHub } from './testHub.ts';

let hub: TestHub;
beforeAll(async () => {
  hub = await testHub();
});
afterAll(() => hub.close());

interface Operation {
  readonly requestBody?: unknown;
  readonly tags?: readonly string[];
  readonly description?: string;
  readonly responses: Readonly<Record<string, unknown>>;
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
});
