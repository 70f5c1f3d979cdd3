import { describe, expect, it } from 'vitest';
import { compareStretches } from '../../src/coaching/compareStretches.ts';
import { gaussian, seededRandom } from '../../src/math/random.ts';
import { percentile } from '../../src/math/stats.ts';

type Sessions = Parameters<typeof compareStretches>[0];

const session = (values: readonly number[]): Sessions[number] => {
  const at = (p: number): number => percentile(values, p)!;
  const spread = { count: values.length, low: at(0.25), median: at(0.5), high: at(0.75) };
  return { rehearsals: { holdS: spread }, balls: {} };
};
const sessions = (medians: readonly number[]): Sessions => medians.map((m) => session([m]));

describe('two stretches of time', () => {
  it('are compared by what a usual session was, each session counting once', () => {
    const a = [session([1, 2, 3, 4, 5]), session([5])];
    const [entry, ...others] = compareStretches(a, [session([2, 3, 4, 5, 6])]);
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
    const many = session(Array.from({ length: 200 }, (_, i) => i / 100));
    const interval = (a: number, b: number) =>
      compareStretches(
        Array<Sessions[number]>(a).fill(many),
        Array<Sessions[number]>(b).fill(many),
      )[0]?.difference?.interval;
    expect(interval(2, 30)).toBeNull();
    expect(interval(30, 2)).toBeNull();
    expect(interval(3, 3)).not.toBeNull();
    expect(compareStretches([], sessions([1]))[0]).toMatchObject({ a: null, difference: null });
  });

  // Cushny & Peebles 1905, hours of sleep gained (data set "sleep" of R): t.test(extra ~ group) of R gives
  // -3.3654832 to 0.2054832 with 17.776 degrees of freedom for the first less the second; scipy 1.17.1 the same.
  it('have the interval that R’s Welch test has on the sleep data', () => {
    const first = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2];
    const second = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];
    const { difference } = compareStretches(sessions(second), sessions(first))[0]!;
    expect(difference!.value).toBeCloseTo(-1.58, 10);
    expect(difference!.interval!.low).toBeCloseTo(-3.3654832, 7);
    expect(difference!.interval!.high).toBeCloseTo(0.2054832, 7);
  });

  // scipy 1.17.1: scipy.stats.ttest_ind(b, a, equal_var=False).confidence_interval(0.95)
  it('and that of scipy with three sessions against four', () => {
    const { difference } = compareStretches(
      sessions([1, 2.5, 2]),
      sessions([4.1, 5, 3.2, 4.4]),
    )[0]!;
    expect(difference!.interval!.low).toBeCloseTo(0.7909588486786936, 8);
    expect(difference!.interval!.high).toBeCloseTo(3.892374484654642, 8);
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
      const { interval } = compareStretches(practised(4, 0), practised(6, 0.5))[0]!.difference!;
      if (interval!.low <= 0.5 && 0.5 <= interval!.high) held += 1;
    }
    expect(held / runs).toBeGreaterThan(0.93);
    expect(held / runs).toBeLessThan(0.98);
  });
});
