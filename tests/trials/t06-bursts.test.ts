// lancaster-university/microbit-dal#300: samples every 20 ms arrive at 1, 1, 42, 1, 48, 2, 2, 45 ms.
import { expect, it } from 'vitest';
import { createClock, observePacket, sessionTime } from '../../src/sensors/clock/clock.ts';

/** The thread's steps; a ninth closes the cycle, so that nine steps make nine periods of 20 ms. */
const STEPS_MS = [1, 1, 42, 1, 48, 2, 2, 45, 38];

function* bursts(seconds: number): Generator<{ sampleS: number; arrivalS: number }> {
  // Nothing arrives before it is taken: the whole pattern is shifted by its earliest arrival.
  let arrivalMs = 0;
  const raw = Array.from({ length: seconds * 50 }, (_, k) => {
    arrivalMs += STEPS_MS[k % STEPS_MS.length] ?? 0;
    return { sampleS: k * 0.02, arrivalS: arrivalMs / 1000 };
  });
  const earliest = Math.min(...raw.map((r) => r.arrivalS - r.sampleS));
  for (const r of raw) yield { ...r, arrivalS: r.arrivalS - earliest + 0.004 };
}

it('samples that arrive in bursts get the times of a regular arrival to 1 ms', () => {
  const clock = createClock();
  const regular = createClock();
  for (const { sampleS, arrivalS } of bursts(60)) {
    observePacket(clock, sampleS, arrivalS);
    observePacket(regular, sampleS, sampleS + 0.004);
    const error = sessionTime(clock, sampleS) - sessionTime(regular, sampleS);
    if (sampleS > 5) expect(Math.abs(error)).toBeLessThan(0.001);
  }
});
