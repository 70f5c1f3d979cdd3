import { describe, expect, it } from 'vitest';
import { countsAsPractice } from '../../src/coaching/countsAsPractice.ts';
import { standingOf, weekCounts } from '../../src/coaching/notCounted.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import type { SessionSummary } from '../../src/sessions/store/rows.ts';
import {
  countedSession,
  progressView,
  summaryView,
  weekRepetitions,
} from '../../src/streaming/sessionsViews.ts';

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
    expect(notCounted).toEqual([
      { startedMs: 4 * DAY_MS, notCounted: 'simulated' },
      { startedMs: 2 * DAY_MS, notCounted: 'simulated' },
    ]);
    expect(newestFirst.map((s) => summaryView(s).notCounted)).toEqual([
      'simulated',
      null,
      'simulated',
      null,
    ]);
  });

  it('what is not analysed yet is in no number, and is told of', () => {
    const waiting = { ...kept(3, false), analysed: false, rehearsals: 0, balls: 0, problem: null };
    const all = [{ ...waiting, state: 'interrupted' as const }, kept(2, false)];
    expect(progressView(all).notCounted).toEqual([
      { startedMs: 3 * DAY_MS, notCounted: 'analysing' },
    ]);
    const counted = all.map(countedSession);
    expect(weekCounts(counted, 3 * DAY_MS)).toMatchObject({ sessions: 1, repetitions: 10 });
    expect(standingOf(weekCounts(counted, 10 * DAY_MS - 1))).toBe('unknown');
  });
});
