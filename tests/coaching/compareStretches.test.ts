import { describe, expect, it } from 'vitest';
import { compareStretches } from '../../src/coaching/compareStretches.ts';
import { gaussian, seededRandom } from '../../src/math/random.ts';

const holds = (values: readonly number[]) => ({ rehearsals: { holdS: values }, balls: {} });
const drawn = (seed: number, count: number, mean: number): number[] => {
  const random = seededRandom(seed);
  return Array.from({ length: count }, () => mean + gaussian(random));
};

describe('two stretches of time', () => {
  it('are compared by median and quartiles, one entry for each measure that was taken', () => {
    const [entry, ...others] = compareStretches(holds([1, 2, 3, 4, 5]), holds([2, 3, 4, 5, 6]));
    expect(others).toEqual([]);
    expect(entry).toMatchObject({
      measure: 'holdS',
      kind: 'rehearsals',
      a: { count: 5, low: 2, median: 3, high: 4 },
      difference: { value: 1 },
    });
  });

  it('have no difference with fewer than five on either side', () => {
    const [entry] = compareStretches(holds([1, 2, 3, 4]), holds([2, 3, 4, 5, 6]));
    expect(entry?.difference).toBeNull();
    expect(entry?.a?.count).toBe(4);
    expect(compareStretches(holds([]), holds([1]))[0]).toMatchObject({ a: null, difference: null });
  });

  it('give the same interval every time', () => {
    const [x, y] = [holds(drawn(1, 30, 0)), holds(drawn(2, 30, 0))];
    expect(compareStretches(x, y)).toEqual(compareStretches(x, y));
  });

  it('cover the true difference about 95 times in 100', () => {
    let covered = 0;
    for (let i = 0; i < 200; i++) {
      const [entry] = compareStretches(
        holds(drawn(2 * i + 1, 40, 0)),
        holds(drawn(2 * i + 2, 30, 0.5)),
      );
      const { low, high } = entry!.difference!;
      if (low <= 0.5 && 0.5 <= high) covered += 1;
    }
    expect(covered / 200).toBeGreaterThan(0.9);
    expect(covered / 200).toBeLessThanOrEqual(1);
  });

  it('take long stretches without stopping the service for long: draws are bounded', () => {
    const [entry] = compareStretches(holds(drawn(1, 20_000, 0)), holds(drawn(2, 20_000, 1)));
    expect(entry?.difference?.value).toBeCloseTo(1, 1);
  });
});
