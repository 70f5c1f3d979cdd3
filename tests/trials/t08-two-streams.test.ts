// urish/muse-js#70: one clock for two streams; time stamps jump when their counters differ.
import { expect, it } from 'vitest';
import { createClock, observePacket, sessionTime } from '../../src/sensors/clock/clock.ts';
import { createUnwrap, unwrap } from '../../src/sensors/clock/unwrap.ts';

interface Stream {
  readonly seq0: number;
  readonly us0: number;
  readonly delayS: number;
}

/** 25 minutes at 104 Hz: the u16 counter wraps twice, the u32 clock of the second stream once. */
function worstStepErrorS({ seq0, us0, delayS }: Stream): number {
  const clock = createClock();
  const seq = createUnwrap(2 ** 16);
  const micros = createUnwrap(2 ** 32);
  let before: number | null = null;
  let worst = 0;
  for (let k = 0; k < 25 * 60 * 104; k++) {
    const arrivalS = k / 104 + delayS;
    if (unwrap(seq, (seq0 + k) % 2 ** 16, arrivalS, 104).value !== seq0 + k) return Infinity;
    const us = unwrap(micros, (us0 + Math.round((k * 1e6) / 104)) % 2 ** 32, arrivalS, 1e6);
    observePacket(clock, us.value / 1e6, arrivalS);
    const now = sessionTime(clock, us.value / 1e6);
    if (before !== null) worst = Math.max(worst, Math.abs(now - before - 1 / 104));
    before = now;
  }
  return worst;
}

it('two streams with unlike counters keep even steps through every wrap', () => {
  expect(worstStepErrorS({ seq0: 65_000, us0: 17, delayS: 0.004 })).toBeLessThan(1e-4);
  expect(worstStepErrorS({ seq0: 3, us0: 2 ** 32 - 6e8, delayS: 0.011 })).toBeLessThan(1e-4);
});
