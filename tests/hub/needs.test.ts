import { describe, expect, it } from 'vitest';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { type RecentSession, type StudentFacts, needsOf } from '../../src/hub/coach/needs.ts';
import { differenceOf } from '../../src/hub/coach/progress.ts';
import { seededRandom, gaussian } from '../../src/math/random.ts';

const NOW = Date.UTC(2026, 2, 20, 12);
const daysAgo = (days: number): number => NOW - days * 86_400_000;

const session = (days: number, more: Partial<RecentSession> = {}): RecentSession => ({
  startedMs: daysAgo(days),
  reviewed: true,
  warnings: 0,
  painBefore: null,
  painAfter: null,
  repetitions: 30,
  balls: 10,
  ballsInMix: 10,
  spreads: {},
  ...more,
});

const facts = (more: Partial<StudentFacts> = {}): StudentFacts => ({
  joinedMs: daysAgo(100),
  lastPracticeMs: daysAgo(1),
  unreviewed: 0,
  oldestUnreviewedMs: null,
  unansweredMs: null,
  plan: DEFAULT_PLAN,
  recent: [session(1)],
  ...more,
});

const codes = (f: StudentFacts): string[] => needsOf(f, NOW).map(({ code }) => code);
const hold = (median: number) => ({ holdS: { count: 10, low: median, median, high: median } });

describe('who needs a look', () => {
  it('is nobody who practises as asked', () => {
    expect(needsOf(facts(), NOW)).toEqual([{ code: 'none', text: 'Practises as asked.' }]);
  });

  it('is first whoever hurts: from 4 of 10, or 2 more than before, until a coach has looked', () => {
    const hurting = (before: number, after: number, reviewed = false): string[] =>
      codes(facts({ recent: [session(1, { painBefore: before, painAfter: after, reviewed })] }));
    expect(hurting(0, 4)[0]).toBe('pain');
    expect(hurting(1, 3)[0]).toBe('pain');
    expect(hurting(3, 3)).toEqual(['none']);
    expect(hurting(0, 6, true)).toEqual(['none']);
  });

  it('comes in the order of need, all reasons in words', () => {
    const all = facts({
      unreviewed: 2,
      oldestUnreviewedMs: daysAgo(6),
      unansweredMs: daysAgo(3),
      recent: [
        session(1, { reviewed: false, warnings: 2, painAfter: 5, ballsInMix: 7, repetitions: 190 }),
        session(6, { reviewed: false }),
      ],
    });
    expect(needsOf(all, NOW).map(({ text }) => text)).toEqual([
      'Pain 5 of 10 in the session of 19 Mar.',
      '2 warnings in the session of 19 Mar.',
      '2 sessions not reviewed, the oldest of 14 Mar.',
      'A comment of 17 Mar waits for an answer.',
      '3 of 20 balls came too early in 7 days.',
      '220 repetitions in 7 days, at most 200 asked.',
    ]);
  });

  it('is who has not practised for ten days, or never since joining', () => {
    expect(codes(facts({ lastPracticeMs: daysAgo(9.5), recent: [] }))).toEqual(['none']);
    expect(codes(facts({ lastPracticeMs: daysAgo(10.5), recent: [] }))).toEqual(['no-practice']);
    expect(needsOf(facts({ lastPracticeMs: null, recent: [] }), NOW)[0]?.text).toMatch(
      /since joining 100 days ago/,
    );
  });

  it('is who drifts off a target reached before, not who never reached it', () => {
    const row = (...medians: number[]) =>
      facts({ recent: medians.map((m, i) => session(i * 8 + 8, { spreads: hold(m) })) });
    expect(needsOf(row(0.7, 0.8, 0.9, 1.4, 1.5, 1.3), NOW)[0]?.text).toBe(
      'Hold at the top: 0.8 s in the last 3 sessions, at least 1 s asked.',
    );
    expect(codes(row(0.7, 1.2, 0.9, 1.4, 1.5, 1.3))).toEqual(['none']);
    expect(codes(row(0.7, 0.8, 0.9, 0.7, 0.8, 0.9))).toEqual(['none']);
    expect(codes(row(0.7, 0.8, 0.9))).toEqual(['none']);
  });
});

describe('a difference of two stretches', () => {
  const random = seededRandom(7);
  const drawn = (n: number, at: number): number[] =>
    Array.from({ length: n }, () => at + gaussian(random));

  it('is not told of fewer than five', () => {
    expect(differenceOf([1, 2, 3, 4], [1, 2, 3, 4, 5])).toBeNull();
  });

  it('covers the true difference of normal values about 95 times of 100', () => {
    let covered = 0;
    for (let i = 0; i < 100; i++) {
      const d = differenceOf(drawn(30, 0), drawn(30, 1))!;
      if (d.low <= 1 && d.high >= 1) covered++;
    }
    expect(covered).toBeGreaterThanOrEqual(88);
  });
});
