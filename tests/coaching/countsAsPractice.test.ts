import { describe, expect, it } from 'vitest';
import { countsAsPractice } from '../../src/coaching/countsAsPractice.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import type { SessionSummary } from '../../src/sessions/store/rows.ts';
import { progressView, summaryView, weekRepetitions } from '../../src/streaming/sessionsViews.ts';

const DAY_MS = 86_400_000;
const kept = (day: number, simulated: boolean): SessionSummary =>
  ({
    id: `s${day}`,
    simulated,
    startedMs: day * DAY_MS,
    state: 'complete',
    analysed: true,
    rehearsals: 8,
    balls: 2,
    spreads: { rehearsals: {}, balls: {} },
    plan: DEFAULT_PLAN,
  }) as unknown as SessionSummary;

describe('what counts as practice', () => {
  it.each([
    [{ simulated: false }, false, true],
    [{ simulated: true }, false, false],
    [{ simulated: true }, true, true],
    [{ simulated: false, watched: true }, false, false],
    [{ simulated: true, watched: true }, true, false],
  ])('%j in a demonstration club %j: %j', (origin, demonstration, counts) => {
    expect(countsAsPractice(origin, demonstration)).toBe(counts);
  });

  it('only that is in the week and in the progress; the rest is listed and says that it is not', () => {
    const newestFirst = [kept(4, true), kept(3, false), kept(2, true), kept(1, false)];
    expect(weekRepetitions(newestFirst, newestFirst[1]!)).toBe(20);
    const { sessions, notCounted } = progressView(newestFirst);
    expect(sessions.map(({ id }) => id)).toEqual(['s1', 's3']);
    expect(notCounted).toBe(2);
    expect(newestFirst.map((s) => summaryView(s).counts)).toEqual([false, true, false, true]);
  });
});
