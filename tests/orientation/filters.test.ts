import { describe, expect, it } from 'vitest';
import { degrees, radians } from '../../src/math/angle.ts';
import {
  IDENTITY,
  type Quat,
  aboutX,
  aboutY,
  aboutZ,
  fromRotationVector,
  mirrorQuat,
  multiply,
  quatAngle,
  relative,
  rotateInverse,
} from '../../src/math/quat.ts';
import { scale, vec3 } from '../../src/math/vec3.ts';
import { madgwickFilter } from '../../src/orientation/ahrsFilter.ts';
import type { FilterState } from '../../src/orientation/orientation.ts';
import { vqfFilter } from '../../src/orientation/vqfFilter.ts';
import { type ImuSample, mirrorSample } from '../../src/sensors/sample.ts';
import { runFilter } from '../bench/runFilter.ts';
import { UP, headingBetween, inclinationBetween, readingAt, sample } from './imu.ts';
import { FILTERS, named } from './allFilters.ts';
import { simulate } from './motion.ts';

const remount = (s: ImuSample, mounting: Quat): ImuSample => ({
  ...s,
  acc: rotateInverse(mounting, s.acc),
  gyro: rotateInverse(mounting, s.gyro),
});

/** Largest inclination error and heading drift between two runs, deg. */
function worst(a: readonly Quat[], b: readonly Quat[]): { inclination: number; heading: number } {
  const [a0, b0] = [a[0] ?? IDENTITY, b[0] ?? IDENTITY];
  const start = headingBetween(a0, b0);
  return {
    inclination: Math.max(...a.map((q, i) => inclinationBetween(q, b[i] ?? IDENTITY))),
    heading: Math.max(...a.map((q, i) => Math.abs(headingBetween(q, b[i] ?? IDENTITY) - start))),
  };
}

describe.each(named)('%s', (_, filter) => {
  // Madgwick's feedback has a constant size: level to within what it does in a sample
  const exact = filter === (madgwickFilter as unknown) ? 0.1 : 1e-6;

  it.each([50, 100, 104, 200])(
    'turns at a steady rate exactly as the closed form says at %d Hz',
    (hz) => {
      const rate = vec3(radians(40), radians(-70), radians(800));
      const state = filter.create();
      let q = filter.update(state, readingAt(0, IDENTITY, rate), 0);
      for (let i = 1; i <= 2 * hz; i++) {
        const truth = fromRotationVector(scale(rate, i / hz));
        q = filter.update(state, readingAt(i / hz, truth, rate), 1 / hz);
        expect(degrees(quatAngle(q, truth))).toBeLessThan(exact);
      }
    },
  );

  it('takes any step: a steady turn in steps of all sizes', () => {
    const rate = vec3(0, 0, radians(300));
    const state = filter.create();
    filter.update(state, readingAt(0, IDENTITY, rate), 0);
    let t = 0;
    for (let i = 0; i < 300; i++) {
      const dtS = 0.002 + 0.02 * Math.abs(Math.sin(i));
      t += dtS;
      const truth = aboutZ(300 * radians(1) * t);
      const q = filter.update(state, readingAt(t, truth, rate), dtS);
      expect(degrees(quatAngle(q, truth))).toBeLessThan(exact);
    }
  });

  it.each([
    ['level', UP],
    ['on its side', vec3(9.8, 0, 0)],
    ['upside down', vec3(0, -9.8, 0)],
    ['askew', vec3(3, -5, 7)],
  ])('is upright from the first sample when it lies %s', (_where, acc) => {
    const q = filter.update(filter.create(), sample(0, acc), 0);
    expect(inclinationBetween(q, IDENTITY)).toBeGreaterThanOrEqual(0);
    const up = rotateInverse(q, vec3(0, 1, 0));
    const n = Math.hypot(acc.x, acc.y, acc.z);
    expect(up.x).toBeCloseTo(acc.x / n, 9);
    expect(up.y).toBeCloseTo(acc.y / n, 9);
    expect(up.z).toBeCloseTo(acc.z / n, 9);
  });

  it('learns the bias at rest and then holds its heading', () => {
    const bias = vec3(radians(1), radians(-0.8), radians(0.6));
    const state = filter.create();
    const at = (i: number): Quat => filter.update(state, sample(i / 100, UP, bias), 0.01);
    for (let i = 0; i < 400; i++) at(i);
    const before = at(400);
    for (let i = 401; i < 6400; i++) at(i);
    expect(state.rest).toBe(true);
    expect(
      degrees(Math.hypot(state.bias.value.x - bias.x, state.bias.value.y - bias.y)),
    ).toBeLessThan(0.01);
    expect(Math.abs(headingBetween(at(6400), before))).toBeLessThan(0.2);
  });

  it('takes a first long stillness as bias even where it is several degrees a second', () => {
    const bias = vec3(radians(4), radians(-5), radians(3));
    const state = filter.create();
    for (let i = 0; i < 500; i++) filter.update(state, sample(i / 100, UP, bias), 0.01);
    expect(degrees(state.bias.value.y)).toBeCloseTo(-5, 2);
    expect(state.rest).toBe(true);
  });

  it('does not take a slow turn for bias once it has seen rest', () => {
    const state = filter.create();
    for (let i = 0; i < 300; i++) filter.update(state, sample(i / 100, UP), 0.01);
    const before = filter.update(state, sample(3, UP), 0.01);
    const rate = vec3(0, radians(6), 0);
    let q = before;
    for (let i = 0; i < 1500; i++) q = filter.update(state, sample(3 + i / 100, UP, rate), 0.01);
    expect(headingBetween(q, before)).toBeCloseTo(90, 0);
  });

  it('follows a simulated movement with noise and bias', () => {
    const { samples, truth } = simulate({
      biasDegPerS: vec3(0.7, -0.5, 0.9),
      noise: { gyroDegPerS: 0.1, acc: 0.05 },
    });
    const error = worst(runFilter(filter, samples), truth);
    expect(error.inclination).toBeLessThan(filter === (vqfFilter as unknown) ? 2 : 6);
    expect(error.heading).toBeLessThan(filter === (vqfFilter as unknown) ? 2 : 6);
  });

  it('does not depend on how the sensor is mounted', () => {
    const { samples } = simulate({ movingS: 8, biasDegPerS: vec3(0.7, -0.5, 0.9) });
    const plain = runFilter(filter, samples);
    for (const mounting of [aboutX(2), aboutY(-1), fromRotationVector(vec3(1, -0.7, 2.1))]) {
      const turned = runFilter(
        filter,
        samples.map((s) => remount(s, mounting)),
      );
      const error = worst(
        turned,
        plain.map((q) => multiply(q, mounting)),
      );
      expect(error.inclination).toBeLessThan(exact);
      expect(error.heading).toBeLessThan(exact);
    }
  });

  it('does not depend on the way the room faces', () => {
    const of = (headingRad: number): readonly Quat[] =>
      runFilter(filter, simulate({ movingS: 6, start: aboutX(0.4), headingRad }).samples);
    const [north, east] = [of(0), of(1.2)];
    const error = worst(north, east);
    expect(error.inclination).toBeLessThan(1e-6);
    expect(error.heading).toBeLessThan(1e-6);
  });

  it('sees the mirrored movement mirrored', () => {
    const { samples } = simulate({ movingS: 8, biasDegPerS: vec3(0.7, -0.5, 0.9) });
    const plain = runFilter(filter, samples).map(mirrorQuat);
    const mirrored = runFilter(filter, samples.map(mirrorSample));
    const error = worst(mirrored, plain);
    expect(error.inclination).toBeLessThan(exact);
    expect(error.heading).toBeLessThan(exact);
  });

  it('runs on from JSON as if nothing had happened, to the bit', () => {
    const { samples } = simulate({ movingS: 6, noise: { gyroDegPerS: 0.1, acc: 0.05 } });
    const whole = runFilter(filter, samples);
    let state = filter.create();
    const split = samples.map((s, i) => {
      if (i % 37 === 0) state = JSON.parse(JSON.stringify(state)) as FilterState;
      return filter.update(state, s, i === 0 ? 0 : s.timeS - (samples[i - 1]?.timeS ?? 0));
    });
    expect(JSON.stringify(split)).toBe(JSON.stringify(whole));
  });

  it('levels within seconds after a gap, short or long', () => {
    const tilted = aboutZ(radians(40));
    const seconds = (gapS: number): number => {
      const state = filter.create();
      for (let i = 0; i < 600; i++)
        filter.update(state, readingAt(i / 100, IDENTITY, vec3(0, 0, 0)), 0.01);
      filter.afterGap(state, gapS);
      for (let i = 0; i < 2000; i++) {
        const q = filter.update(state, readingAt(6 + i / 100, tilted, vec3(0, 0, 0)), 0.01);
        if (inclinationBetween(q, tilted) < 1) return i / 100;
      }
      return Infinity;
    };
    expect(seconds(2)).toBeLessThan(5);
    expect(seconds(0.05)).toBeLessThan(5);
  });
});

describe('the filters together', () => {
  it('agree on a gentle movement within 3 degrees', () => {
    const { samples } = simulate({ rateDegPerS: 60, accPeak: 1 });
    const runs = FILTERS.map((f) => runFilter(f, samples));
    const [a = [], ...others] = runs;
    for (const b of others)
      expect(Math.max(...a.map((q, i) => degrees(quatAngle(q, b[i] ?? IDENTITY))))).toBeLessThan(3);
    expect(relative(a[0] ?? IDENTITY, a[0] ?? IDENTITY).w).toBeCloseTo(1, 12);
  });
});
