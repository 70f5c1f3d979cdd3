// alexandrebarachant/muse-lsl#99: index x nominal rate drifts against the wall clock.
import { expect, it } from 'vitest';
import { createClock, observePacket, sessionTime } from '../../src/sensors/clock/clock.ts';
import { fitWhole } from '../sensors/clock/fitWhole.ts';
import { packets } from '../sensors/clock/links.ts';

const HOUR_S = 3600;
const runs = [40, -40].map((ppm, i) => [
  ...packets({ rateHz: 104, intervalMs: 15, ppm, seconds: HOUR_S, seed: 70 + i }),
]);

it('two sensors 80 ppm apart stay within 5 ms over 60 minutes, live and in the final fit', () => {
  const live = runs.map((run) => {
    const clock = createClock();
    return run.map((p) => {
      observePacket(clock, p.deviceS, p.arrivalS);
      return sessionTime(clock, p.deviceS) - p.trueS;
    });
  });
  const final = runs.map((run) => {
    const { slope, offset } = fitWhole(run);
    return run.map((p) => slope * p.deviceS + offset - p.trueS);
  });
  const worst = ([a, b]: number[][], from: number): number => {
    let most = 0;
    for (let i = from; i < (a?.length ?? 0) - 100; i++)
      most = Math.max(most, Math.abs((a?.[i] ?? NaN) - (b?.[i] ?? NaN)));
    return most;
  };
  expect(worst(live, 1000)).toBeLessThan(0.005);
  expect(worst(final, 0)).toBeLessThan(0.001);
});

it('index x nominal rate would be 288 ms out by then (the fault this trial is about)', () => {
  const last = runs.map((run) => (run.at(-1)?.deviceS ?? 0) - (run[0]?.deviceS ?? 0));
  const truth = runs.map((run) => (run.at(-1)?.trueS ?? 0) - (run[0]?.trueS ?? 0));
  const drift = (last[0] ?? 0) - (truth[0] ?? 0) - ((last[1] ?? 0) - (truth[1] ?? 0));
  expect(drift * 1000).toBeCloseTo(288, 0);
});
