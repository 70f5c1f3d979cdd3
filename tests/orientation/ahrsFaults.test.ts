import AHRS from 'ahrs';
import { describe, expect, it } from 'vitest';
import { degrees, radians } from '../../src/math/angle.ts';
import {
  IDENTITY,
  type Quat,
  aboutX,
  aboutY,
  aboutZ,
  fromRotationVector,
  quat,
  quatAngle,
  quatNorm,
  rotateInverse,
} from '../../src/math/quat.ts';
import { UNIT_Z, ZERO, angleBetween, vec3 } from '../../src/math/vec3.ts';
import { madgwickFilter, mahonyFilter } from '../../src/orientation/ahrsFilter.ts';
import { UP, inclinationBetween, readingAt, sample } from './imu.ts';

// Each fault of ahrs 1.3.3 as it comes, and beside it the guarded filter on the same readings.
// The package's earth is Z up: its level reading is (0, 0, g).

type Algorithm = 'Mahony' | 'Madgwick';
const raw = (algorithm: Algorithm, more: { beta?: number; sampleInterval?: number } = {}): AHRS =>
  new AHRS({ sampleInterval: 10, algorithm, ...more });

const attitude = (a: AHRS): Quat => {
  const q = a.getQuaternion();
  return quat(q.w, q.x, q.y, q.z);
};

const G = 9.80665;
const rate800 = radians(800);

describe('NaN for ever', () => {
  it('raw Madgwick: one sample that is not a number', () => {
    const a = raw('Madgwick');
    a.update(NaN, 0, 0, 0, 0, G, 0, 0, 0, 0.01);
    for (let i = 0; i < 100; i++) a.update(0, 0, 0, 0.1, 0.1, G, 0, 0, 0, 0.01);
    expect(attitude(a).w).toBeNaN();
  });

  it('raw Madgwick: a gradient of exactly zero, simply by lying level', () => {
    const a = raw('Madgwick');
    a.update(0, 0, 0, 0, 0, G, 0, 0, 0, 0.01);
    expect(attitude(a).w).toBeNaN();
  });

  it('guarded: neither', () => {
    for (const filter of [madgwickFilter, mahonyFilter]) {
      const state = filter.create();
      filter.update(state, sample(0, UP), 0);
      filter.update(state, sample(0.01, UP, vec3(NaN, 0, 0)), 0.01);
      const q = filter.update(state, sample(0.02, UP), 0.01);
      expect(quatNorm(q)).toBeCloseTo(1, 12);
      expect(inclinationBetween(q, IDENTITY)).toBeLessThan(1e-6);
    }
  });
});

describe('no feedback in Mahony where one axis reads exactly zero', () => {
  // 30 degrees about the package's x axis: the force has no x part at all
  it('raw: 20 s later it is still 30 degrees off', () => {
    const a = raw('Mahony');
    const [y, z] = [G * Math.sin(radians(30)), G * Math.cos(radians(30))];
    for (let i = 0; i < 2000; i++) a.update(0, 0, 0, 0, y, z, 0, 0, 0, 0.01);
    expect(degrees(quatAngle(attitude(a), IDENTITY))).toBeCloseTo(0, 9);
  });

  it('guarded: levels', () => {
    const state = mahonyFilter.create();
    mahonyFilter.update(state, sample(0, UP), 0);
    const tilted = aboutX(radians(30));
    mahonyFilter.afterGap(state, 5);
    let q: Quat = IDENTITY;
    for (let i = 1; i < 2000; i++)
      q = mahonyFilter.update(state, readingAt(i / 100, tilted, ZERO), 0.01);
    expect(inclinationBetween(q, tilted)).toBeLessThan(0.1);
  });
});

describe('time steps', () => {
  it('raw: the interval is in ms, so that seconds make it 1000 times as fast', () => {
    const turned = (sampleInterval: number): number => {
      const a = raw('Mahony', { sampleInterval });
      a.update(0, 0, radians(10), 0, 0, 0);
      return degrees(quatAngle(attitude(a), IDENTITY));
    };
    expect(turned(10)).toBeCloseTo(0.1, 4);
    expect(turned(0.01)).toBeLessThan(0.001);
  });

  it('raw: a dt of 0 is ignored and the one before it sticks', () => {
    const a = raw('Mahony');
    a.update(0, 0, 1, 0, 0, 0, 0, 0, 0, 0.1);
    const before = attitude(a);
    a.update(0, 0, 1, 0, 0, 0, 0, 0, 0, 0);
    expect(quatAngle(attitude(a), before)).toBeCloseTo(0.1, 3);
  });

  it('guarded: dt is what is given, in s, and 0 moves nothing', () => {
    for (const filter of [madgwickFilter, mahonyFilter]) {
      const state = filter.create();
      const turning = sample(0, UP, vec3(0, 1, 0));
      filter.update(state, turning, 0);
      const a = filter.update(state, turning, 0.1);
      expect(filter.update(state, turning, 0)).toEqual(a);
      expect(quatAngle(a, IDENTITY)).toBeCloseTo(0.1, 9);
      expect(quatAngle(filter.update(state, turning, 0.02), a)).toBeCloseTo(0.02, 9);
    }
  });

  it('raw: a gain of 0 is ignored', () => {
    const tiltAfter = (beta: number): number => {
      const a = raw('Madgwick', { beta });
      for (let i = 0; i < 100; i++) a.update(0, 0, 0, 3, 0.1, 9, 0, 0, 0, 0.01);
      return degrees(quatAngle(attitude(a), IDENTITY));
    };
    expect(tiltAfter(0)).toBeCloseTo(tiltAfter(0.4), 9);
    expect(tiltAfter(1e-9)).toBeLessThan(0.001);
  });
});

describe('first-order integration', () => {
  const shortBy = (of: (i: number) => Quat): number =>
    Math.abs(degrees(quatAngle(of(45), fromRotationVector(vec3(0, 0, rate800 * 0.45)))));

  it('raw: more than half a degree short after 0.45 s at 800 deg/s', () => {
    const a = raw('Mahony');
    for (let i = 0; i < 45; i++) a.update(0, 0, rate800, 0, 0, 0, 0, 0, 0, 0.01);
    expect(shortBy(() => attitude(a))).toBeGreaterThan(0.5);
  });

  it('guarded: exact', () => {
    const state = mahonyFilter.create();
    const gyro = vec3(0, 0, rate800);
    let q = mahonyFilter.update(state, readingAt(0, IDENTITY, gyro), 0);
    for (let i = 1; i <= 45; i++)
      q = mahonyFilter.update(state, readingAt(i / 100, aboutZ((rate800 * i) / 100), gyro), 0.01);
    expect(shortBy(() => q)).toBeLessThan(1e-6);
  });

  it('guarded: exact for steps of half a turn too', () => {
    const state = mahonyFilter.create();
    const gyro = vec3(0, Math.PI, 0);
    mahonyFilter.update(state, sample(0, UP, gyro), 0);
    const q = mahonyFilter.update(state, sample(1, UP, gyro), 0.9);
    expect(quatAngle(q, aboutY(Math.PI * 0.9))).toBeLessThan(1e-9);
  });
});

describe('the start', () => {
  const tilt = aboutX(radians(60));

  it('raw: starts level and takes seconds to see how it lies', () => {
    const a = raw('Mahony');
    const force = rotateInverse(tilt, vec3(0.01, 0.01, G));
    for (let i = 0; i < 100; i++) a.update(0, 0, 0, force.x, force.y, force.z, 0, 0, 0, 0.01);
    const up = rotateInverse(attitude(a), UNIT_Z);
    expect(degrees(angleBetween(up, force))).toBeGreaterThan(5);
  });

  it('raw: its own start without a magnetic field needs 0, 0, 0 given, or it is NaN', () => {
    const a = new AHRS({ sampleInterval: 10, algorithm: 'Mahony', doInitialisation: true });
    a.update(0, 0, 0, 1, 2, G);
    expect(attitude(a).w).toBeNaN();
  });

  it('guarded: right from the first sample', () => {
    for (const filter of [madgwickFilter, mahonyFilter]) {
      const q = filter.update(filter.create(), readingAt(0, tilt, ZERO), 0);
      expect(inclinationBetween(q, tilt)).toBeLessThan(1e-9);
    }
  });
});
