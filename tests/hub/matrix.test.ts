import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { GuardedRoute } from '../../src/hub/access/guard.ts';
import { keptSession } from './keptSession.ts';
import { type TestHub, testHub } from './testHub.ts';

let hub: TestHub;
beforeAll(async () => {
  hub = await testHub();
  const { db } = hub.context;
  await db
    .insertInto('session')
    .values(keptSession('s1', 'sam', 1))
    .execute();
  const of = { sessionId: 's1', atMs: 1 };
  await db
    .insertInto('comment')
    .values({
      ...of,
      id: 'c1',
      authorId: 'sam',
      text: 'x',
      repIndex: null,
      momentS: null,
      replyTo: null,
    })
    .execute();
  await db
    .insertInto('clip')
    .values({
      id: 'k1',
      sessionId: 's1',
      byId: 'sam',
      name: 'x',
      type: 'video/mp4',
      bytes: 1,
      createdMs: 1,
      startS: null,
      view: null,
    })
    .execute();
  await db
    .insertInto('lesson')
    .values({ id: 'l1', studentId: 'sam', atMs: 1, text: 'x' })
    .execute();
});
afterAll(() => hub.close());

/** Sam's things, wherever an address names one. */
const OF_SAM: Readonly<Record<string, string>> = {
  studentId: 'sam',
  sessionId: 's1',
  clipId: 'k1',
  commentId: 'c1',
  machineId: 'samMachine',
  planId: 'p1',
  lessonId: 'l1',
};

const addressOf = (url: string): string =>
  url.replaceAll(/:(\w+)/g, (_all, name: string) => OF_SAM[name] ?? '1');

/** Who must not get through, and what each is told. Sam is carl's student, sue too; olga owns the club. */
function refusals({ access }: GuardedRoute): Readonly<Record<string, number>> {
  const persons = { sam: 403, sue: 403, carl: 403, olga: 403 };
  const machines = { 'sam:machine': 403, 'sue:machine': 403 };
  switch (access.who) {
    case 'anyone':
      return {};
    case 'signed-in':
      return machines;
    case 'coach':
      return { sam: 403, sue: 403, ...machines };
    case 'owner':
      return { sam: 403, sue: 403, carl: 403, ...machines };
    case 'student':
      return { carl: 403, olga: 403, ...machines };
    case 'student-or-coach':
      return { sue: 404, olga: 404, ...machines };
    case 'coach-of':
      return { sam: 403, sue: 403, olga: 404, ...machines };
    case 'machine':
      return persons;
  }
}

const ask = async (who: string | null, { method, url }: GuardedRoute): Promise<number> => {
  const asked = { method: method as 'GET', url: addressOf(url) };
  return (await hub.ask(who, asked)).statusCode;
};

describe('every route of the hub', () => {
  it('has a rule, and there are as many as we know of', () => {
    expect(hub.routes.length).toBeGreaterThan(45);
    const open = hub.routes.filter(({ access }) => access.who === 'anyone');
    expect(open.map(({ method, url }) => `${method} ${url}`).sort()).toEqual([
      'GET /api/invitation/:code',
      'GET /api/setup',
      'POST /api/invitation/:code',
      'POST /api/login',
      'POST /api/pair',
      'POST /api/setup',
    ]);
  });

  it('turns away whoever may not, before the body is read', async () => {
    for (const route of hub.routes) {
      const name = `${route.method} ${route.url}`;
      if (route.access.who !== 'anyone') expect(await ask(null, route), name).toBe(401);
      for (const [who, status] of Object.entries(refusals(route)))
        expect(await ask(who, route), `${name} as ${who}`).toBe(status);
    }
  });

  it('that changes something needs the token of the page', async () => {
    const changing = hub.routes.filter(
      ({ method, access }) =>
        method !== 'GET' && access.who !== 'anyone' && access.who !== 'machine',
    );
    expect(changing.length).toBeGreaterThan(20);
    for (const { method, url, access } of changing) {
      const who = access.who === 'student' ? 'sam' : access.who === 'owner' ? 'olga' : 'carl';
      const answer = await hub.ask(who, {
        method: method as 'POST',
        url: addressOf(url),
        headers: { 'x-csrf-token': 'another' },
      });
      expect(answer.statusCode, `${method} ${url}`).toBe(403);
      expect(answer.json(), `${method} ${url}`).toMatchObject({ error: { code: 'csrf' } });
    }
  });
});
