import { describe, expect, it } from 'vitest';
import { comparePeriods } from '../../src/coaching/comparePeriods.ts';
import { TARGET_MEASURES, type TargetMeasure } from '../../src/coaching/plan.ts';
import { gaussian, seededRandom } from '../../src/math/random.ts';
import { percentile } from '../../src/math/stats.ts';

type Sessions = Parameters<typeof comparePeriods>[0];

const NOTHING = {
  scored: 0,
  passed: 0,
  rehearsals: {},
  balls: {},
  carryOver: { addedFlexion: null, keptRotation: null },
};

const session = (values: readonly number[]): Sessions[number] => {
  const at = (p: number): number => percentile(values, p)!;
  const spread = { count: values.length, low: at(0.25), median: at(0.5), high: at(0.75) };
  return { ...NOTHING, rehearsals: { holdS: spread } };
};
const sessions = (medians: readonly number[]): Sessions => medians.map((m) => session([m]));

describe('two periods', () => {
  it('are compared by what a usual session was, each session counting once', () => {
    const a = [session([1, 2, 3, 4, 5]), session([5])];
    const { differences, together } = comparePeriods(a, [session([2, 3, 4, 5, 6])]);
    const [entry, ...others] = differences;
    expect(together).toBe(0);
    expect(others).toEqual([]);
    expect(entry).toEqual({
      measure: 'holdS',
      kind: 'rehearsals',
      a: { sessions: 2, count: 6, low: 3.5, median: 4, high: 4.5 },
      b: { sessions: 1, count: 5, low: 3, median: 4, high: 5 },
      difference: { value: 0, interval: null },
    });
  });

  it('claim no interval with fewer than three sessions on either side, however many repetitions', () => {
    const many = (count: number): Sessions =>
      Array.from({ length: count }, (_, k) =>
        session(Array.from({ length: 200 }, (_v, i) => (i + k) / 100)),
      );
    const interval = (a: number, b: number) =>
      comparePeriods(many(a), many(b)).differences[0]?.difference?.interval;
    expect(interval(2, 30)).toBeNull();
    expect(interval(30, 2)).toBeNull();
    expect(interval(3, 3)).not.toBeNull();
    expect(comparePeriods([], sessions([1])).differences[0]).toMatchObject({
      a: null,
      difference: null,
    });
  });

  // Cushny & Peebles 1905, hours of sleep gained (data set "sleep" of R): t.test(extra ~ group) of R gives
  // -3.3654832 to 0.2054832 with 17.776 degrees of freedom for the first less the second; scipy 1.17.1 the same.
  it('have the interval that R’s Welch test has on the sleep data', () => {
    const first = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2];
    const second = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];
    const { difference } = comparePeriods(sessions(second), sessions(first)).differences[0]!;
    expect(difference!.value).toBeCloseTo(-1.58, 10);
    expect(difference!.interval!.low).toBeCloseTo(-3.3654832, 7);
    expect(difference!.interval!.high).toBeCloseTo(0.2054832, 7);
  });

  // scipy 1.17.1: scipy.stats.ttest_ind(b, a, equal_var=False).confidence_interval(0.95)
  it('and that of scipy with three sessions against four', () => {
    const { difference } = comparePeriods(sessions([1, 2.5, 2]), sessions([4.1, 5, 3.2, 4.4]))
      .differences[0]!;
    expect(difference!.interval!.low).toBeCloseTo(0.7909588486786936, 8);
    expect(difference!.interval!.high).toBeCloseTo(3.892374484654642, 8);
  });

  const all = (medians: readonly number[], measures: readonly TargetMeasure[]): Sessions =>
    medians.map((m) => {
      const spread = { count: 1, low: m, median: m, high: m };
      const each = Object.fromEntries(measures.map((measure) => [measure, spread]));
      return { ...NOTHING, rehearsals: each };
    });

  // Upper critical values of Student's t, NIST/SEMATECH e-Handbook 1.3.6.7.2: 3.169 (0.995, 10 degrees of freedom) and
  // 2.228 (0.975, 10). Six sessions on either side with equal variances have exactly 10 degrees of freedom.
  it('give each of five intervals 99 %, so that all five hold together', () => {
    const medians = [1, 2, 3, 4, 5, 6];
    const error = Math.sqrt((2 * 3.5) / 6);
    const reach = (measures: readonly TargetMeasure[]): number[] => {
      const found = comparePeriods(all(medians, measures), all(medians, measures));
      expect(found.together).toBe(measures.length);
      return found.differences.map(({ difference }) => difference!.interval!.high / error);
    };
    for (const t of reach(TARGET_MEASURES.slice(0, 5))) expect(t).toBeCloseTo(3.169, 3);
    for (const t of reach(TARGET_MEASURES.slice(0, 1))) expect(t).toBeCloseTo(2.228, 3);
  });

  it('compare shares passed, all and target by target, each session once, and carry-over', () => {
    const one = (passed: number, scored: number, ratio: number | null): Sessions[number] => ({
      ...NOTHING,
      scored,
      passed,
      checks: { holdS: { scored, passed: scored } },
      carryOver: { addedFlexion: ratio, keptRotation: null },
    });
    const { differences } = comparePeriods(
      [one(1, 2, 0.5), one(0, 20, null), one(0, 0, null)],
      [one(5, 10, 0.7)],
    );
    expect(differences.map(({ kind, measure }) => [kind, measure])).toEqual([
      ['passed', null],
      ['passed', 'holdS'],
      ['carryOver', 'addedFlexionDeg'],
    ]);
    expect(differences[0]).toMatchObject({
      a: { sessions: 2, count: 22, median: 0.25, low: 0.125, high: 0.375 },
      difference: { value: 0.25 },
    });
    expect(differences[1]).toMatchObject({ a: { median: 1 }, difference: { value: 0 } });
    expect(differences[2]!.difference!.value).toBeCloseTo(0.2, 12);
  });

  it('claim no range where no session differs from another', () => {
    const same = (share: number): Sessions =>
      Array.from({ length: 4 }, () => ({ ...NOTHING, scored: 10, passed: share }));
    const { differences, together } = comparePeriods(same(0), same(10));
    expect(together).toBe(0);
    expect(differences[0]!.difference).toEqual({ value: 1, interval: null });
  });

  it('hold all seven true differences at once at least 95 times in 100, where each alone would not', () => {
    const random = seededRandom(11);
    const practised = (count: number): Sessions =>
      Array.from({ length: count }, () => ({
        ...NOTHING,
        rehearsals: Object.fromEntries(
          TARGET_MEASURES.map((measure) => {
            const m = gaussian(random);
            return [measure, { count: 1, low: m, median: m, high: m }];
          }),
        ),
      }));
    const runs = 1000;
    let [held, heldAlone] = [0, 0];
    for (let i = 0; i < runs; i++) {
      const [a, b] = [practised(5), practised(6)];
      const holds = (of: ReturnType<typeof comparePeriods>): boolean =>
        of.differences.every(
          ({ difference: d }) => d!.interval!.low <= 0 && 0 <= d!.interval!.high,
        );
      if (holds(comparePeriods(a, b))) held += 1;
      const only = (from: Sessions, m: TargetMeasure): Sessions =>
        from.map((s) => ({ ...NOTHING, rehearsals: { [m]: s.rehearsals[m]! } }));
      if (TARGET_MEASURES.every((m) => holds(comparePeriods(only(a, m), only(b, m)))))
        heldAlone += 1;
    }
    expect(held / runs).toBeGreaterThanOrEqual(0.95);
    expect(heldAlone / runs).toBeLessThan(0.8);
  });

  it('hold the true difference about 95 times in 100 also where the repetitions of a session are alike', () => {
    const random = seededRandom(7);
    const practised = (count: number, mean: number): Sessions =>
      Array.from({ length: count }, () => {
        const ofTheDay = mean + gaussian(random);
        return session(Array.from({ length: 12 }, () => ofTheDay + gaussian(random)));
      });
    const runs = 1000;
    let held = 0;
    for (let i = 0; i < runs; i++) {
      const { interval } = comparePeriods(practised(4, 0), practised(6, 0.5)).differences[0]!
        .difference!;
      if (interval!.low <= 0.5 && 0.5 <= interval!.high) held += 1;
    }
    expect(held / runs).toBeGreaterThan(0.93);
    expect(held / runs).toBeLessThan(0.98);
  });
});
