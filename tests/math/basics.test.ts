import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clamp, radians, wrapDeg, wrapPi } from '../../src/math/angle.ts';
import { gaussian, seededRandom, uniform } from '../../src/math/random.ts';
import {
  mean,
  median,
  medianAbsoluteDeviation,
  percentile,
  rootMeanSquare,
} from '../../src/math/stats.ts';
import {
  UNIT_X,
  UNIT_Y,
  UNIT_Z,
  ZERO,
  angleBetween,
  cross,
  isFiniteVec,
  lerp,
  normalise,
  vec3,
} from '../../src/math/vec3.ts';

describe('angles', () => {
  it('wrap into one turn and stay the same angle', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e4, max: 1e4, noNaN: true }), (a) => {
        const w = wrapDeg(a);
        expect(w).toBeGreaterThan(-180);
        expect(w).toBeLessThanOrEqual(180);
        expect(Math.cos(radians(w))).toBeCloseTo(Math.cos(radians(a)), 9);
        expect(Math.sin(radians(w))).toBeCloseTo(Math.sin(radians(a)), 9);
        expect(Math.abs(wrapPi(radians(a)))).toBeLessThanOrEqual(Math.PI);
        expect(Math.cos(wrapPi(radians(a)))).toBeCloseTo(Math.cos(radians(a)), 9);
      }),
    );
    expect([wrapDeg(180), wrapDeg(-180), wrapDeg(540), wrapDeg(-270)]).toEqual([180, 180, 180, 90]);
    expect(wrapPi(-Math.PI)).toBe(Math.PI);
    expect(clamp(5, 0, 1)).toBe(1);
  });
});

describe('vectors', () => {
  it('are right-handed', () => {
    expect(cross(UNIT_X, UNIT_Y)).toEqual(UNIT_Z);
    expect(cross(UNIT_Y, UNIT_Z)).toEqual(UNIT_X);
  });

  it('have an angle that is exact near 0 and half a turn', () => {
    expect(angleBetween(UNIT_X, vec3(1, 1e-9, 0))).toBeCloseTo(1e-9, 15);
    expect(Math.PI - angleBetween(UNIT_X, vec3(-1, 1e-9, 0))).toBeCloseTo(1e-9, 14);
  });

  it('without a direction have no unit vector', () => {
    expect(normalise(ZERO)).toBeNull();
    expect(normalise(vec3(NaN, 1, 0))).toBeNull();
    expect(normalise(vec3(0, 0, 4))).toEqual(UNIT_Z);
    expect(isFiniteVec(vec3(0, Infinity, 0))).toBe(false);
    expect(lerp(ZERO, vec3(2, 4, 8), 0.25)).toEqual(vec3(0.5, 1, 2));
  });
});

describe('statistics', () => {
  // values from the definitions; the percentile is numpy's default (linear, type 7 of Hyndman & Fan 1996)
  it('agree with hand calculation', () => {
    const v = [4, 1, 3, 2, 10];
    expect([mean(v), median(v), rootMeanSquare([3, 4])]).toEqual([4, 3, Math.sqrt(12.5)]);
    expect(percentile(v, 0.95)).toBeCloseTo(8.8, 12);
    expect(medianAbsoluteDeviation(v)).toBe(1);
  });

  it('of nothing are null, never NaN', () => {
    for (const f of [mean, median, rootMeanSquare, medianAbsoluteDeviation])
      expect(f([])).toBeNull();
    expect(percentile([NaN], 0.5)).toBeNull();
  });
});

describe('random numbers', () => {
  it('repeat with their seed and differ without it', () => {
    const draw = (seed: number): number[] => Array.from({ length: 5 }, seededRandom(seed));
    expect(draw(3)).toEqual(draw(3));
    expect(draw(3)).not.toEqual(draw(4));
  });

  it('have the spread they should', () => {
    const random = seededRandom(1);
    const normal = Array.from({ length: 20_000 }, () => gaussian(random));
    expect(mean(normal)).toBeCloseTo(0, 1);
    expect(rootMeanSquare(normal)).toBeCloseTo(1, 1);
    const even = Array.from({ length: 20_000 }, () => uniform(random, 2, 4));
    expect(mean(even)).toBeCloseTo(3, 1);
    expect(Math.min(...even)).toBeGreaterThanOrEqual(2);
    expect(Math.max(...even)).toBeLessThan(4);
  });
});
