import { describe, expect, it } from 'vitest';
import { TARGET_MEASURES } from '../../../src/coaching/plan.ts';
import { axisOf } from '../../../src/dashboard/hub/report/points.ts';
import { seededRandom } from '../../../src/math/random.ts';

describe('the value axis of a report', () => {
  it('holds every middle half and the target, and begins and ends at a round value', () => {
    const random = seededRandom(5);
    for (const measure of TARGET_MEASURES)
      for (let i = 0; i < 100; i++) {
        const [scale, at] = [10 ** (4 * random() - 1), 200 * (random() - 0.5)];
        const points = Array.from({ length: 5 }, (_, k) => {
          const median = at + scale * (random() - 0.5);
          const half = scale * random();
          const spread = { count: 3, low: median - half, median, high: median + half };
          return { ...spread, atMs: k, kind: 'rehearsals' as const };
        });
        const { low, high, ticks } = axisOf(points, measure, { min: at - scale });
        expect(low).toBeLessThanOrEqual(Math.min(at - scale, ...points.map((p) => p.low)));
        expect(high).toBeGreaterThanOrEqual(Math.max(...points.map((p) => p.high)));
        expect([ticks[0], ticks.at(-1)]).toEqual([low, high]);
        expect(ticks.length).toBeGreaterThanOrEqual(2);
        expect(ticks.length).toBeLessThanOrEqual(5);
        const steps = ticks.slice(1).map((tick, k) => tick - ticks[k]!);
        for (const step of steps) expect(step).toBeCloseTo(steps[0]!, 5);
      }
  });

  it('is of the numbers that a reader would choose', () => {
    const spread = { count: 3, low: 0.74, median: 0.9, high: 1.31, atMs: 0 };
    const points = [{ ...spread, kind: 'rehearsals' as const }];
    expect(axisOf(points, 'holdS', { min: 1 }).ticks).toEqual([0.6, 0.8, 1, 1.2, 1.4]);
    const turned = [{ ...points[0]!, low: -17, median: -12, high: -3 }];
    expect(axisOf(turned, 'keptRotationDeg', { min: -15 }).ticks).toEqual([-20, -15, -10, -5, 0]);
  });
});
