import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { HubSessionList } from '../../../src/streaming/hubContract/review.ts';
import type {
  PeriodComparison,
  HubProgress,
  LastValues,
  StudentList,
} from '../../../src/streaming/hubContract/students.ts';
import { type TestHub, testHub } from '../testHub.ts';
import { DAY_MS, addSession } from './rows.ts';

let hub: TestHub;
beforeEach(async () => {
  hub = await testHub();
});
afterEach(() => hub.close());

const ask = async <T>(url: string): Promise<T> =>
  (await hub.ask('carl', { url: `/api/students${url}` })).json<T>();

describe('a session without numbers', () => {
  it.each([
    [null, 'analysing'],
    ['no calibration', 'failed'],
  ] as const)(
    'with the problem %j is %s wherever numbers are, and nothing is denied',
    async (problem, why) => {
      const startedMs = hub.context.now() - DAY_MS;
      await hub.context.db.updateTable('person').set({ createdMs: 0 }).execute();
      await addSession(hub, {
        id: 'one',
        studentId: 'sam',
        startedMs,
        analysed: 0,
        version: null,
        problem,
      });
      const { students } = await ask<StudentList>('');
      const sam = students.find(({ id }) => id === 'sam')!;
      expect(sam).toMatchObject({ lastPracticeMs: startedMs, weekNotCounted: { [why]: 1 } });
      expect(sam.needs.map(({ code }) => code)).toEqual(['unreviewed']);
      const months = await ask<HubProgress>('/sam/progress');
      expect(months).toMatchObject({ sessions: [], notCounted: [{ startedMs, notCounted: why }] });
      const range = `aFromMs=0&aToMs=${startedMs}&bFromMs=${startedMs}&bToMs=${startedMs + 1}`;
      const { a, b } = await ask<PeriodComparison>(`/sam/compare?${range}`);
      expect([a.notCounted[why], b.notCounted[why]]).toEqual([0, 1]);
    },
  );
});

describe.each([
  ['a club', 0, 0],
  ['a demonstration club', 1, 1],
])('a simulated session in %s', (_, demo, counted) => {
  it(`counts ${counted} times, everywhere alike, and is listed`, async () => {
    await hub.context.db.updateTable('club').set({ demo }).execute();
    const startedMs = hub.context.now() - DAY_MS;
    await addSession(hub, {
      id: 'one',
      studentId: 'sam',
      startedMs,
      simulated: 1,
      rehearsals: 8,
      balls: 2,
      painBefore: 1,
      painAfter: 7,
      spreads: JSON.stringify({
        rehearsals: { holdS: { count: 8, low: 1, median: 1.1, high: 1.2 } },
        balls: {},
      }),
    });
    const { students } = await ask<StudentList>('');
    const sam = students.find(({ id }) => id === 'sam')!;
    expect([sam.weekRehearsals, sam.weekBalls, sam.unreviewed]).toEqual([
      8 * counted,
      2 * counted,
      counted,
    ]);
    expect(sam.lastPracticeMs).toBe(counted === 1 ? startedMs : null);
    expect(sam.needs.some(({ code }) => code === 'pain')).toBe(counted === 1);
    expect((await ask<HubProgress>('/sam/progress')).sessions).toHaveLength(counted);
    expect(Object.keys(await ask<LastValues>('/sam/last'))).toHaveLength(counted);
    const range = `aFromMs=0&aToMs=${startedMs}&bFromMs=${startedMs}&bToMs=${startedMs + 1}`;
    expect((await ask<PeriodComparison>(`/sam/compare?${range}`)).b.sessions).toBe(counted);
    const { sessions } = await ask<HubSessionList>('/sam/sessions');
    expect(sessions.map(({ summary }) => summary.notCounted)).toEqual([
      counted === 1 ? null : 'simulated',
    ]);
    expect(sam.simulatedSessions).toBe(1 - counted);
    expect(/only simulated sessions so far\.$/i.test(sam.needs[0]?.text ?? '')).toBe(counted === 0);
  });
});
