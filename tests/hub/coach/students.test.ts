import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { HubSession, HubSessionList } from '../../../src/streaming/hubContract/review.ts';
import type {
  PeriodComparison,
  StudentList,
  StudentView,
} from '../../../src/streaming/hubContract/students.ts';
import { type TestHub, testHub } from '../testHub.ts';
import { DAY_MS, addPlan, addSession } from './rows.ts';

let hub: TestHub;
beforeEach(async () => {
  hub = await testHub();
});
afterEach(() => hub.close());

const list = async (who: string): Promise<StudentList['students']> =>
  (await hub.ask(who, { url: '/api/students' })).json<StudentList>().students;

describe('two periods', () => {
  it('hold their own sessions, and claim a range only from three sessions on either side on', async () => {
    const at = (day: number, hold: number) => ({
      id: `s${day}`,
      studentId: 'sam',
      startedMs: day * DAY_MS,
      spreads: JSON.stringify({
        rehearsals: { holdS: { count: 8, low: hold - 0.1, median: hold, high: hold + 0.1 } },
        balls: {},
        checks: { holdS: { scored: 8, passed: 2 } },
      }),
      scored: 8,
      passed: 4,
      carryOver: JSON.stringify({ addedFlexion: 0.75, keptRotation: null }),
      planNumber: day > 4 ? 2 : 1,
    });
    for (const [day, hold] of [1, 1.2, 1.1, 1.6, 1.4, 1.5].entries())
      await addSession(hub, at(day + 1, hold));
    const compare = async (a: readonly [number, number], b: readonly [number, number]) => {
      const [aFromMs, aToMs, bFromMs, bToMs] = [...a, ...b].map((d) => d * DAY_MS);
      const url = `/api/students/sam/compare?aFromMs=${aFromMs}&aToMs=${aToMs}&bFromMs=${bFromMs}&bToMs=${bToMs}`;
      return (await hub.ask('carl', { url })).json<PeriodComparison>();
    };
    const { a, b, differences, together } = await compare([1, 4], [4, 7]);
    expect([a.sessions, b.sessions]).toEqual([3, 3]);
    expect([a.planNumbers, b.planNumbers]).toEqual([[1], [1, 2]]);
    const kinds = differences.map(({ kind, measure }) => [kind, measure]);
    expect(kinds).toEqual([
      ['passed', null],
      ['passed', 'holdS'],
      ['rehearsals', 'holdS'],
      ['carryOver', 'addedFlexionDeg'],
    ]);
    expect(together).toBe(1);
    const [all, one, hold, carried] = differences;
    expect(all).toMatchObject({ a: { median: 0.5, sessions: 3 }, difference: { value: 0 } });
    expect(one).toMatchObject({ a: { median: 0.25, count: 24 }, difference: { interval: null } });
    expect(carried).toMatchObject({ a: { median: 0.75 }, b: { median: 0.75 } });
    const { difference, a: usual } = hold!;
    expect(usual).toMatchObject({ sessions: 3, count: 24 });
    expect(difference!.value).toBeCloseTo(0.4, 10);
    // scipy 1.17.1: ttest_ind([1.6, 1.4, 1.5], [1, 1.2, 1.1], equal_var=False).confidence_interval()
    expect(difference!.interval!.low).toBeCloseTo(0.1733, 4);
    const [two] = (await compare([1, 3], [4, 7])).differences.slice(2);
    expect(two!.difference).toMatchObject({ interval: null });
  });
});

describe('the list of students', () => {
  it('names pain before an unreviewed session, and says why', async () => {
    const now = hub.clock.ms;
    await addSession(hub, { id: 'a', studentId: 'sam', startedMs: now - DAY_MS, rehearsals: 8 });
    await addSession(hub, {
      id: 'b',
      studentId: 'sue',
      startedMs: now - 2 * DAY_MS,
      painAfter: 6,
      balls: 3,
    });
    const [first, second, ...others] = await list('carl');
    expect(others).toEqual([]);
    expect(first).toMatchObject({ id: 'sue', unreviewed: 1, nextSessionId: 'b', weekBalls: 3 });
    expect(first?.needs[0]).toEqual({
      code: 'pain',
      text: 'Rated pain 6 of 10.',
      sessionId: 'b',
      atMs: now - 2 * DAY_MS,
      quote: null,
      answerTo: null,
    });
    expect(second).toMatchObject({ id: 'sam', weekRehearsals: 8 });
    expect(second?.needs[0]?.code).toBe('unreviewed');
  });

  it('says that nothing changed to who has it already, and not when something did', async () => {
    const first = await hub.ask('carl', { url: '/api/students' });
    const etag = String(first.headers['etag']);
    const again = () =>
      hub.ask('carl', { url: '/api/students', headers: { 'if-none-match': etag } });
    const same = await again();
    expect([same.statusCode, same.body]).toEqual([304, '']);
    await addSession(hub, { id: 'x', studentId: 'sam', startedMs: hub.clock.ms - DAY_MS });
    expect((await again()).json<StudentList>().students).toHaveLength(2);
  });

  it('has only the own students of a coach, and none for a student', async () => {
    expect((await list('olga')).map((s) => s.id)).toEqual(['tom']);
    expect((await hub.ask('sam', { url: '/api/students' })).statusCode).toBe(403);
    expect((await hub.ask(null, { url: '/api/students' })).statusCode).toBe(401);
  });

  it('keeps pain when its session is reviewed, and lets go of questions once answered', async () => {
    const url = '/api/sessions/a';
    await addSession(hub, {
      id: 'a',
      studentId: 'sam',
      startedMs: hub.clock.ms - DAY_MS,
      painAfter: 7,
      warnings: 2,
    });
    for (const [position, warningId] of ['pain-high', 'missed'].entries())
      await hub.context.db
        .insertInto('warning')
        .values({ sessionId: 'a', position, warningId, atS: 1, text: 'x' })
        .execute();
    const ask = (who: string) =>
      hub.ask(who, { method: 'POST', url: `${url}/comments`, payload: { text: 'Is this well?' } });
    await ask('sam');
    const codes = async () =>
      (await list('carl')).find((s) => s.id === 'sam')?.needs.map((n) => n.code);
    expect(await codes()).toEqual(['pain', 'warning', 'unanswered', 'unreviewed', 'volume']);
    await hub.ask('carl', { method: 'PUT', url: `${url}/reviewed`, payload: { reviewed: true } });
    expect(await codes()).toEqual(['pain', 'unanswered', 'volume', 'seen-warning']);
    hub.clock.ms += 1000;
    await ask('carl');
    expect(await codes()).toEqual(['pain', 'volume', 'seen-warning']);
  });
});

describe('one student', () => {
  it('is shown with the plan that is valid now, machine and sessions', async () => {
    await addPlan(hub, 'sam', 1);
    await addPlan(hub, 'sam', 2, undefined, hub.clock.ms + DAY_MS);
    await addSession(hub, { id: 'a', studentId: 'sam', startedMs: hub.clock.ms - DAY_MS });
    const view = (await hub.ask('carl', { url: '/api/students/sam' })).json<StudentView>();
    expect(view).toMatchObject({ name: 'Sam', coach: 'Carl', paired: true, sessions: 1 });
    expect(view.plan.number).toBe(1);
    hub.clock.ms += 2 * DAY_MS;
    const later = (await hub.ask('carl', { url: '/api/students/sam' })).json<StudentView>();
    expect(later.plan.number).toBe(2);
  });

  it('has the standard plan, numbered 0, where no coach has set one', async () => {
    const view = (await hub.ask('carl', { url: '/api/students/sam' })).json<StudentView>();
    expect(view.plan).toMatchObject({ number: 0, plan: { schema: 1 } });
  });

  it('does not read what the coach is told of them', async () => {
    for (const [who, status] of [
      ['sam', 403],
      ['sue', 403],
      ['olga', 404],
    ] as const)
      expect((await hub.ask(who, { url: '/api/students/sam' })).statusCode).toBe(status);
  });

  it('is renamed, with markup kept as text, and with no other fields', async () => {
    const name = '<img src=x onerror=alert(1)>';
    const patch = (payload: object) =>
      hub.ask('carl', { method: 'PATCH', url: '/api/students/sam', payload });
    expect((await patch({ name })).statusCode).toBe(204);
    expect((await list('carl')).map((s) => s.name)).toContain(name);
    // Both are looked for in the log when the next one comes.
    for (const next of ['Anna-Lena B. (left)', 'Sam/1+1'])
      expect((await patch({ name: next })).statusCode, next).toBe(204);
    expect((await patch({ role: 'owner' })).statusCode).toBe(400);
    expect((await patch({ name: 'x'.repeat(81) })).statusCode).toBe(400);
    expect((await patch({ name: '  ' })).statusCode).toBe(400);
  });
});

describe('sessions of a student', () => {
  it('come in pages of fifty, newest first, each once', async () => {
    for (let i = 0; i < 120; i++)
      await addSession(hub, { id: `s${i}`, studentId: 'sam', startedMs: 1000 + i });
    const seen: string[] = [];
    let url = '/api/students/sam/sessions';
    for (;;) {
      const page = (await hub.ask('sam', { url })).json<HubSessionList>();
      seen.push(...page.sessions.map((s) => s.summary.id));
      if (!page.more) break;
      const last = page.sessions.at(-1)!.summary.startedAt;
      url = `/api/students/sam/sessions?beforeMs=${Date.parse(last)}`;
    }
    expect(seen).toEqual(Array.from({ length: 120 }, (_, i) => `s${119 - i}`));
  });

  it('show one with its neighbours in time and all that was said', async () => {
    for (const [i, id] of ['a', 'b', 'c'].entries())
      await addSession(hub, { id, studentId: 'sam', startedMs: 1000 + i });
    await addSession(hub, { id: 'other', studentId: 'tom', startedMs: 1001 });
    const view = (await hub.ask('carl', { url: '/api/sessions/b' })).json<HubSession>();
    expect(view).toMatchObject({
      student: 'Sam',
      older: { id: 'a' },
      newer: { id: 'c' },
      comments: [],
      // Another version analysed it.
      analysing: true,
    });
    expect(view.plan.schema).toBe(1);
    expect(view.analysis).toBeNull();
    expect((await hub.ask('carl', { url: '/api/sessions/other' })).statusCode).toBe(404);
    expect((await hub.ask('sue', { url: '/api/sessions/b' })).statusCode).toBe(404);
  });
});
