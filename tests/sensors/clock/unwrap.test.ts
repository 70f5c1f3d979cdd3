import { describe, expect, it } from 'vitest';
import { createUnwrap, unwrap, unwrapNear } from '../../../src/sensors/clock/unwrap.ts';

describe('a counter that wraps', () => {
  it('u16 sequence numbers run on through two wraps', () => {
    const state = createUnwrap(2 ** 16);
    const first = 65_500;
    let wrong = 0;
    for (let k = 0; k < 140_000; k++) {
      const { value, restarted } = unwrap(state, (first + k) % 65_536, k / 104, 104);
      if (restarted || value !== first + k) wrong += 1;
    }
    expect(wrong).toBe(0);
  });

  it('a u32 microsecond clock runs on through its wrap at 71.6 min', () => {
    const state = createUnwrap(2 ** 32);
    const start = 2 ** 32 - 3_000_000;
    for (let k = 0; k < 1000; k++) {
      const us = start + k * 9615;
      expect(unwrap(state, us % 2 ** 32, k * 0.009615 + 5, 1e6).value).toBe(us);
    }
  });

  it('counts the wraps that passed during a long loss', () => {
    const state = createUnwrap(2 ** 16);
    unwrap(state, 10, 0, 104);
    const lost = 104 * 1500;
    expect(unwrap(state, (10 + lost) % 65_536, 1500.4, 104)).toEqual({
      value: 10 + lost,
      step: lost,
      restarted: false,
    });
  });

  it('tells a restart from a wrap', () => {
    const state = createUnwrap(2 ** 32);
    unwrap(state, 500_000_000, 100, 1e6);
    expect(unwrap(state, 400_000, 106, 1e6)).toEqual({ value: 400_000, step: 0, restarted: true });
  });

  it('reads a little before or after the last reading as such, over the wrap too', () => {
    const state = createUnwrap(2 ** 32);
    expect(unwrapNear(state, 7)).toBeNull();
    unwrap(state, 2 ** 32 - 10, 0, 1e6);
    expect(unwrapNear(state, 5)).toBe(2 ** 32 + 5);
    expect(unwrapNear(state, 2 ** 32 - 25)).toBe(2 ** 32 - 25);
  });

  it('gives the number of lost packets as step less one', () => {
    const state = createUnwrap(2 ** 16);
    unwrap(state, 65_530, 0, 104);
    expect(unwrap(state, 4, 0.1, 104).step).toBe(10);
  });
});
