import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import type { HubSession } from '../../src/streaming/hubContract/review.ts';
import type { ApiError } from '../../src/streaming/sessionsContract.ts';
import type { Inbox } from '../../src/streaming/hubContract/machine.ts';
import { type TestHub, testHub } from './testHub.ts';
import { SESSION, sessionsOf, upload } from './uploads/sending.ts';

let hub: TestHub;
beforeEach(async () => {
  hub = await testHub();
  await upload(hub, 'sam:machine', 'a1', SESSION);
});
afterEach(() => hub.close());

const inbox = async (): Promise<Inbox> =>
  (await hub.ask('sam:machine', { url: '/api/machine/inbox' })).json<Inbox>();

async function plan(number: number, validFromMs: number, holdS: number): Promise<void> {
  await hub.context.db
    .insertInto('plan')
    .values({
      id: `p${number}`,
      studentId: 'sam',
      number,
      plan: JSON.stringify({
        ...DEFAULT_PLAN,
        targets: { ...DEFAULT_PLAN.targets, holdS: { min: holdS } },
      }),
      validFromMs,
      createdMs: 1,
      byId: 'carl',
      reachedMs: null,
    })
    .execute();
}

const COMMENT = {
  id: 'abcdefghij123456',
  clientId: 'a1',
  text: 'It felt late.',
  index: 2,
  replyTo: null,
};
const say = (who: string, comment: object) =>
  hub.ask(who, { url: '/api/machine/comments', method: 'POST', payload: comment });

describe('a note that was edited after its session had come', () => {
  const patch = (who: string, clientId: string, payload: object) =>
    hub.ask(who, {
      url: `/api/machine/sessions/${clientId}/notes`,
      method: 'PATCH',
      payload,
    });
  const notes = { note: 'Windy.', painBefore: 1, painAfter: 2 };
  const kept = async () => {
    const { id } = (await sessionsOf(hub, 'sam'))[0]!;
    return (await hub.ask('carl', { url: `/api/sessions/${id}` })).json<HubSession>().notes;
  };

  it('is what the coach sees, with when it was edited', async () => {
    expect(await kept()).toMatchObject({ note: '', editedMs: null });
    expect((await patch('sam:machine', 'a1', notes)).statusCode).toBe(204);
    expect(await kept()).toEqual({ ...notes, editedMs: hub.clock.ms });
  });

  it('is no edit where it is the same', async () => {
    expect((await patch('sam:machine', 'a1', { ...notes, note: '' })).statusCode).toBe(204);
    expect(await kept()).toEqual({ ...notes, note: '', editedMs: null });
  });

  it('takes no pain away that was there', async () => {
    await patch('sam:machine', 'a1', { note: '', painBefore: 1, painAfter: 6 });
    await patch('sam:machine', 'a1', { note: '', painBefore: 0, painAfter: 0 });
    expect(await kept()).toMatchObject({ painBefore: 1, painAfter: 6 });
    // A higher rating before would make the rise look smaller, unless it is pain itself.
    await patch('sam:machine', 'a1', { note: '', painBefore: 3, painAfter: 6 });
    expect(await kept()).toMatchObject({ painBefore: 1, painAfter: 6 });
    await patch('sam:machine', 'a1', { note: '', painBefore: 5, painAfter: null });
    expect(await kept()).toMatchObject({ painBefore: 5, painAfter: 6 });
  });

  it.each([
    ['a note that is too long', { ...notes, note: 'x'.repeat(5001) }, 'Note'],
    ['a note that is no text', { ...notes, note: 3 }, 'Note'],
    ['pain beyond 10', { ...notes, painAfter: 11 }, 'Pain after'],
    ['pain that is left out', { note: '', painBefore: 1 }, 'Pain after'],
    ['what is no note', { ...notes, name: 'x' }, 'Name'],
  ])('is refused with the field named: %s', async (_what, wrong, field) => {
    const answer = await patch('sam:machine', 'a1', wrong);
    expect(answer.statusCode).toBe(400);
    expect(answer.json<ApiError>().error.message).toContain(field);
    expect(await kept()).toMatchObject({ note: '', editedMs: null });
  });

  it('belongs to a session of this student', async () => {
    expect((await patch('sue:machine', 'a1', notes)).statusCode).toBe(404);
    expect((await patch('sam:machine', 'other', notes)).statusCode).toBe(404);
    expect(await kept()).toMatchObject({ note: '' });
  });
});

describe('a machine that waits for news', () => {
  const ask = (waitS: number, have?: string) =>
    hub.ask('sam:machine', {
      url: `/api/machine/inbox?waitS=${waitS}`,
      headers: { ...(have !== undefined && { 'if-none-match': have }) },
    });
  const nameOf = async (): Promise<string> => String((await ask(50)).headers['etag']);

  it('has them as soon as the coach has given them, whatever they are', async () => {
    const { id } = (await sessionsOf(hub, 'sam'))[0]!;
    const changes = [
      ['POST', '/api/students/sam/plans', { plan: DEFAULT_PLAN, validFromMs: 0, basedOn: 0 }],
      ['POST', `/api/sessions/${id}/comments`, { text: 'Hold.' }],
      ['PUT', `/api/sessions/${id}/reviewed`, { reviewed: true }],
    ] as const;
    for (const [method, url, payload] of changes) {
      let answered = false;
      const waiting = ask(50, await nameOf()).finally(() => (answered = true));
      await new Promise((done) => setTimeout(done, 30));
      expect(answered).toBe(false);
      expect((await hub.ask('carl', { method, url, payload })).statusCode).toBeLessThan(300);
      expect((await waiting).statusCode).toBe(200);
    }
  });

  it('does not hear of another student’s', async () => {
    let answered = false;
    const waiting = ask(1, await nameOf()).finally(() => (answered = true));
    await new Promise((done) => setTimeout(done, 30));
    const payload = { plan: DEFAULT_PLAN, validFromMs: 0, basedOn: 0 };
    const url = '/api/students/sue/plans';
    expect((await hub.ask('carl', { method: 'POST', url, payload })).statusCode).toBe(201);
    await new Promise((done) => setTimeout(done, 30));
    expect(answered).toBe(false);
    expect((await waiting).statusCode).toBe(304);
  });

  it('is let go where it asks anew, and where the hub ends', async () => {
    const name = await nameOf();
    const first = ask(50, name);
    await new Promise((done) => setTimeout(done, 30));
    const second = ask(50, name);
    expect((await first).statusCode).toBe(304);
    const closed = hub.close();
    await second;
    await closed;
  });

  it('is answered at once where it has something else', async () => {
    expect((await ask(50, '"older"')).statusCode).toBe(200);
    expect((await ask(0)).statusCode).toBe(400);
  });
});

describe('what a student’s machine fetches', () => {
  it('names the people, and no plan where there is none', async () => {
    expect(await inbox()).toMatchObject({
      student: 'Sam',
      coach: 'Carl',
      club: 'Fernhill Practice Club',
      plan: null,
      nextPlan: null,
      threads: [],
    });
  });

  it('is the plan that is valid now, what changed, and the one to come', async () => {
    await plan(1, 0, 1);
    await plan(2, hub.clock.ms, 1.5);
    await plan(3, hub.clock.ms + 1000, 2);
    const { plan: now, nextPlan } = await inbox();
    expect(now).toMatchObject({ id: 'p2', number: 2, by: 'Carl' });
    expect(now?.changes.join(' ')).toMatch(/1\.5/);
    expect(nextPlan).toMatchObject({ id: 'p3' });
    hub.clock.ms += 1000;
    expect((await inbox()).plan).toMatchObject({ id: 'p3' });
  });

  it('tells when a plan reached it, the first time, and of its own student only', async () => {
    await plan(1, 0, 1);
    const seen = (who: string) =>
      hub.ask(who, {
        url: '/api/machine/plan-seen',
        method: 'POST',
        payload: { planId: 'p1' },
      });
    const reached = async () =>
      (await hub.context.db.selectFrom('plan').select('reachedMs').executeTakeFirst())?.reachedMs;
    await seen('sue:machine');
    expect(await reached()).toBeNull();
    await seen('sam:machine');
    const at = hub.clock.ms;
    hub.clock.ms += 5000;
    expect((await seen('sam:machine')).statusCode).toBe(204);
    expect(await reached()).toBe(at);
  });

  it('holds what was said, by whom, under the student’s own name of the session', async () => {
    const [session] = await sessionsOf(hub, 'sam');
    await hub.context.db
      .insertInto('comment')
      .values({
        id: 'coachcomment1234',
        sessionId: session!.id,
        authorId: 'carl',
        atMs: 5,
        text: 'Wait at the top.',
        repIndex: 2,
        momentS: null,
        replyTo: null,
      })
      .execute();
    expect((await say('sam:machine', { ...COMMENT, replyTo: 'coachcomment1234' })).statusCode).toBe(
      204,
    );
    const { threads } = await inbox();
    expect(threads).toMatchObject([
      {
        clientId: 'a1',
        comments: [
          { by: 'Carl', byRole: 'coach', mine: false, text: 'Wait at the top.', index: 2 },
          { by: 'Sam', byRole: 'student', mine: true, replyTo: 'coachcomment1234' },
        ],
      },
    ]);
    const sue = await hub.ask('sue:machine', { url: '/api/machine/inbox' });
    expect(sue.json<Inbox>().threads).toEqual([]);
  });
});

describe('what a student’s machine sends', () => {
  it('is one comment, however often it comes', async () => {
    for (let i = 0; i < 3; i++) expect((await say('sam:machine', COMMENT)).statusCode).toBe(204);
    expect(await hub.context.db.selectFrom('comment').selectAll().execute()).toHaveLength(1);
  });

  it.each<[string, string, object, number]>([
    ['about a session that was not sent', 'sam:machine', { ...COMMENT, clientId: 'zz' }, 404],
    ['about another student’s session', 'sue:machine', COMMENT, 404],
    ['with no words', 'sam:machine', { ...COMMENT, text: '  ' }, 400],
    ['of endless length', 'sam:machine', { ...COMMENT, text: 'x'.repeat(4001) }, 400],
    ['that answers nothing', 'sam:machine', { ...COMMENT, replyTo: 'nothere' }, 422],
    ['with fields that are none', 'sam:machine', { ...COMMENT, authorId: 'carl' }, 400],
  ])('is refused %s', async (_, who, comment, status) => {
    expect((await say(who, comment)).statusCode).toBe(status);
    expect(await hub.context.db.selectFrom('comment').selectAll().execute()).toEqual([]);
  });

  it('is nothing more once it has revoked itself', async () => {
    const gone = await hub.ask('sam:machine', { url: '/api/machine', method: 'DELETE' });
    expect(gone.statusCode).toBe(204);
    expect((await hub.ask('sam:machine', { url: '/api/machine/inbox' })).statusCode).toBe(401);
    // What was sent stays.
    expect(await sessionsOf(hub, 'sam')).toHaveLength(1);
  });
});
