import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { labelRows } from '../../../src/dashboard/review/plot/labelRows.ts';
import { pathOf } from '../../../src/dashboard/review/plot/path.ts';
import { rangeOf, shareOf, ticksOf } from '../../../src/dashboard/review/plot/scale.ts';

const finite = fc.double({ min: -1e4, max: 1e4, noNaN: true });

describe('a range', () => {
  it('holds every value, is as wide as asked and ends on whole steps', () => {
    fc.assert(
      fc.property(fc.array(fc.option(finite), { maxLength: 40 }), (column) => {
        const { low, high } = rangeOf([column], 10, 40);
        for (const value of column)
          if (value !== null) expect(value >= low && value <= high).toBe(true);
        expect(high - low).toBeGreaterThanOrEqual(40);
        expect(Math.abs(low % 10)).toBe(0);
        expect(Math.abs(high % 10)).toBe(0);
      }),
    );
  });

  it('without a value lies around zero', () => {
    expect(rangeOf([[], [null]], 10, 40)).toEqual({ low: -20, high: 20 });
  });

  it('has few ticks, all inside it', () => {
    fc.assert(
      fc.property(finite, fc.double({ min: 0.2, max: 5000, noNaN: true }), (low, width) => {
        const range = { low, high: low + width };
        const ticks = ticksOf(range, 5);
        expect(ticks.length).toBeLessThanOrEqual(6);
        for (const tick of ticks) {
          expect(shareOf(range, tick)).toBeGreaterThanOrEqual(-1e-4);
          expect(shareOf(range, tick)).toBeLessThanOrEqual(1 + 1e-4);
        }
      }),
    );
  });
});

describe('a path', () => {
  const ranges = { x: { low: 0, high: 10 }, y: { low: 0, high: 100 } };
  const box = { width: 100, height: 50 };

  it('grows upward from left to right', () => {
    expect(pathOf([0, 5, 10], [0, 100, 50], ranges, box)).toBe('M0 50L50 0L100 25');
  });

  it('lifts the pen where a value was lost', () => {
    expect(pathOf([0, 1, 2, 3], [0, null, 0, 0], ranges, box)).toBe('M0 50M20 50L30 50');
  });

  it('leaves out what lies before or after its axis', () => {
    expect(pathOf([-1, 0, 10, 11], [0, 0, 0, 0], ranges, box)).toBe('M0 50L100 50');
  });

  it('never has anything but numbers in it', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(finite, fc.option(finite))), (points) => {
        const path = pathOf(
          points.map(([x]) => x),
          points.map(([, y]) => y),
          ranges,
          box,
        );
        expect(path).toMatch(/^([ML]-?[\d.e+]+ -?[\d.e+]+)*$/);
      }),
    );
  });
});

it('labels that would meet stand in different rows', () => {
  expect(labelRows([0, 0.5, 0.52, 0.54, 0.9], 0.1)).toEqual([0, 0, 1, 2, 0]);
});
