import { describe, expect, it } from 'vitest';
import { studentT } from '../../src/math/studentT.ts';

describe('Student’s t', () => {
  // Abramowitz & Stegun 1964, table 26.10, column A = 0.95.
  it.each([
    [1, 12.706],
    [2, 4.303],
    [3, 3.182],
    [4, 2.776],
    [5, 2.571],
    [10, 2.228],
    [30, 2.042],
    [120, 1.98],
  ])('leaves 5 %% outside for %i degrees of freedom at %f', (df, t) => {
    expect(studentT(0.05, df)).toBeCloseTo(t, 3);
  });

  // scipy 1.17.1: scipy.stats.t.ppf(0.975, df)
  it.each([
    [1.5, 6.016663104427929],
    [2.7, 3.3921483831737507],
    [17.776, 2.102821310380221],
    [1000, 1.9623390808264083],
  ])('also for %f, as scipy has it', (df, t) => {
    expect(Math.abs(studentT(0.05, df) - t)).toBeLessThan(1e-8);
  });
});
