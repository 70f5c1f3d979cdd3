// Mayitzin/ahrs#29: a 90 degree turn reads 180, because the filter's default rate is used on other data.
import { describe, expect, it } from 'vitest';
import { degrees, radians } from '../../src/math/angle.ts';
import { type Quat, aboutY, aboutZ, quatAngle } from '../../src/math/quat.ts';
import { gaussian, seededRandom } from '../../src/math/random.ts';
import { type Vec3, scale, vec3 } from '../../src/math/vec3.ts';
import type { Orientation } from '../../src/orientation/orientation.ts';
import { createTrack, stepTrack, trackQuality } from '../../src/orientation/track.ts';
import type { ImuSample } from '../../src/sensors/sample.ts';
import { runFilter } from '../bench/runFilter.ts';
import { named } from '../orientation/allFilters.ts';
import { readingAt } from '../orientation/imu.ts';

const RATES_HZ = [50, 100, 104, 200];
const noise = seededRandom(11);
const BIAS = vec3(radians(0.4), radians(-0.6), radians(0.3));

const scatter = (v: Vec3, sigma: number): Vec3 =>
  vec3(v.x + sigma * gaussian(noise), v.y + sigma * gaussian(noise), v.z + sigma * gaussian(noise));

/** A turn-table: 3 s still, a quarter turn in 1 s, 2 s still; readings with bias and noise. */
function quarterTurn(hz: number, about: (angle: number) => Quat, axis: Vec3): ImuSample[] {
  return Array.from({ length: 6 * hz + 1 }, (_, i) => {
    const u = Math.PI * Math.min(Math.max(i / hz - 3, 0), 1);
    const q = about(((1 - Math.cos(u)) * Math.PI) / 4);
    const rate = scale(axis, (Math.sin(u) * Math.PI * Math.PI) / 4);
    const s = readingAt(i / hz, q, rate, BIAS);
    return { ...s, acc: scatter(s.acc, 0.03), gyro: scatter(s.gyro, radians(0.1)) };
  });
}

const turned = (q: readonly (Quat | undefined)[], hz: number): number => {
  const [before, after] = [q[Math.round(2.9 * hz)], q.at(-1)];
  return before && after ? degrees(quatAngle(before, after)) : NaN;
};

const AXES = [
  ['the vertical', aboutY, vec3(0, 1, 0)],
  ['a horizontal axis', aboutZ, vec3(0, 0, 1)],
] as const;

describe.each(AXES)('a quarter turn about %s reads 90 degrees', (_, about, axis) => {
  it.each(RATES_HZ)('in the track at %d Hz, which it measures itself', (hz) => {
    const state = createTrack();
    const out: Orientation[] = [];
    for (const s of quarterTurn(hz, about, axis)) stepTrack(state, s, (o) => out.push(o));
    expect(
      Math.abs(
        turned(
          out.map((o) => o.q),
          hz,
        ) - 90,
      ),
    ).toBeLessThan(0.3);
    expect(trackQuality(state).rateHz).toBeCloseTo(hz, 6);
    expect(trackQuality(state)).toMatchObject({ lost: 0, gaps: [] });
  });

  describe.each(named)('with %s', (_name, filter) => {
    it.each(RATES_HZ)('at %d Hz', (hz) => {
      const q = runFilter(filter, quarterTurn(hz, about, axis));
      expect(Math.abs(turned(q, hz) - 90)).toBeLessThan(1);
    });
  });
});
