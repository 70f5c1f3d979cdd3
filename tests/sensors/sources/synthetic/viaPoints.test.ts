import { describe, expect, it } from 'vitest';
import { channelAt, jet, quintic } from '../../../../src/sensors/sources/synthetic/channel.ts';
import { smoothThrough } from '../../../../src/sensors/sources/synthetic/viaPoints.ts';

const knot = (timeS: number, x: number) => ({ timeS, ...jet(x) });

describe('the smoothest movement through given points', () => {
  it('is the plain minimum-jerk movement where the points lie on it', () => {
    const [from, to] = [knot(0, 0), knot(1, 2)];
    const via = [0.3, 0.6].map((timeS) => ({ timeS, x: quintic(from, to, timeS).x }));
    for (const k of smoothThrough(from, via, to)) {
      const expected = quintic(from, to, k.timeS);
      expect(k.v).toBeCloseTo(expected.v, 9);
      expect(k.a).toBeCloseTo(expected.a, 8);
    }
  });

  it('passes the points without a step in the third derivative', () => {
    const [from, to] = [knot(0, -0.6), knot(0.6, 0.2)];
    const via = [
      { timeS: 0.22, x: 0.2 },
      { timeS: 0.27, x: 0.4 },
    ];
    const channel = [from, ...smoothThrough(from, via, to), to];
    const h = 1e-5;
    for (const { timeS, x } of via) {
      expect(channelAt(channel, timeS).x).toBeCloseTo(x, 12);
      const jerk = (t: number) =>
        (channelAt(channel, t + h).a - channelAt(channel, t - h).a) / (2 * h);
      const [before, after] = [jerk(timeS - 2 * h), jerk(timeS + 2 * h)];
      expect(Math.abs(after - before)).toBeLessThan(1e-3 * Math.abs(before) + 1);
    }
  });
});
