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
    expect(sessions.map(({ summary }) => summary.counts)).toEqual([counted === 1]);
  });
});
