import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mergeCurve } from '../../src/dashboard/feed/merge.ts';
import { appendCurve, emptyCurve } from '../../src/practice/curve.ts';
import type { CurveView } from '../../src/practice/view.ts';

const curveOf = (times: readonly number[]): CurveView => ({
  timeS: times,
  flexionDeg: times.map((t) => t * 2),
  turnDeg: times.map((t) => -t),
  keptRotationDeg: times.map(() => null),
});

describe('the curve that a page keeps', () => {
  it('equals the one of the service, however the points were cut into batches and repeated', () => {
    const cuts = fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 30 });
    fc.assert(
      fc.property(cuts, fc.integer({ min: 0, max: 5 }), (sizes, repeated) => {
        const service = emptyCurve();
        let page = curveOf([]);
        let next = 0;
        for (const size of sizes) {
          const from = Math.max(0, next - repeated);
          const times = Array.from({ length: next + size - from }, (_, i) => (from + i) / 50);
          appendCurve(service, curveOf(times.slice(next - from)));
          page = mergeCurve(page, curveOf(times));
          next += size;
        }
        expect(page).toEqual({ ...service });
      }),
    );
  });

  it('ignores what it already has', () => {
    const ours = curveOf([1, 2, 3]);
    expect(mergeCurve(ours, curveOf([2, 3]))).toBe(ours);
    expect(mergeCurve(ours, curveOf([]))).toBe(ours);
  });
});
