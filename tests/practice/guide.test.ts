import { describe, expect, it } from 'vitest';
import { radians } from '../../src/math/angle.ts';
import { vec3 } from '../../src/math/vec3.ts';
import { newCount, stepCount } from '../../src/practice/guide/count.ts';
import { newRange, stepRange } from '../../src/practice/guide/range.ts';
import { newStill, stepStill } from '../../src/practice/guide/still.ts';
import { sensorProblems } from '../../src/practice/sensorCheck.ts';
import type { SensorView } from '../../src/practice/view.ts';
import { link, sample } from './scripted.ts';

/** Rates of `n` movements of `deg` there and back, each way a half sine of 1 s, with a drifting gyro. */
function* bows(n: number, deg: number, driftDegPerS = 0) {
  for (let i = 0; i < n * 200; i++) {
    const t = i / 100;
    const way = Math.floor(t) % 2 === 0 ? 1 : -1;
    const rate = (way * deg * Math.PI * Math.sin(Math.PI * (t % 1))) / 2;
    yield { ...sample('chest', t), gyro: vec3(0, radians(0.8), radians(rate + driftDegPerS)) };
  }
}

const counted = (samples: Iterable<ReturnType<typeof sample>>): number => {
  const state = newCount();
  let count = 0;
  for (const s of samples) count = stepCount(state, s, 20);
  return count;
};

describe('counting movements', () => {
  it('counts each one there and back', () => {
    expect(counted(bows(3, 45))).toBe(3);
    expect(counted(bows(7, 30))).toBe(7);
  });

  it('is not misled by a gyro that is off by some degrees a second', () => {
    expect(counted(bows(3, 45, 4))).toBe(3);
    expect(counted(bows(3, 45, -4))).toBe(3);
  });

  it('does not count small ones, nor what is not a number', () => {
    expect(counted(bows(5, 15))).toBe(0);
    expect(counted([{ ...sample('chest', 0), gyro: vec3(Number.NaN, 9, 9) }])).toBe(0);
  });
});

describe('standing still', () => {
  const turning = (degPerS: number, timeS: number, sensor: 'chest' | 'trailArm' = 'chest') => ({
    ...sample(sensor, timeS),
    gyro: vec3(0, radians(degPerS), 0),
  });

  it('begins when both sensors are slow and ends when one is not', () => {
    const state = newStill();
    for (let i = 0; i < 100; i++) stepStill(state, turning(2, i / 100));
    expect(stepStill(state, turning(2, 1, 'trailArm'))).toBe(0);
    for (let i = 100; i < 140; i++) stepStill(state, turning(60, i / 100));
    expect(state.sinceS).toBeNull();
    for (let i = 140; i < 260; i++) stepStill(state, turning(1, i / 100));
    expect(state.sinceS).toBeGreaterThan(1.5);
  });

  it('forgives one shaken sample', () => {
    const state = newStill();
    for (let i = 0; i < 100; i++) stepStill(state, turning(2, i / 100));
    expect(stepStill(state, turning(100, 1))).toBe(0);
  });
});

describe('the end of a range', () => {
  it('is what was held, not what was flung through', () => {
    const state = newRange();
    const curve = (t: number): number => (t > 2 && t < 2.15 ? 95 : t > 1 && t < 3 ? 80 : 20);
    let end: number | null = null;
    for (let t = 0; t < 4; t += 0.02) end = stepRange(state, t, curve(t));
    expect(end).toBe(80);
  });

  it('is unknown where nothing was seen', () => {
    const state = newRange();
    for (let t = 0; t < 4; t += 0.02) stepRange(state, t, null);
    expect(state.bestDeg).toBeNull();
  });
});

describe('the check of the sensors', () => {
  const well = (sensor: 'chest' | 'trailArm', change: Partial<SensorView> = {}): SensorView => ({
    ...link(sensor),
    rateHz: 100,
    lostPct: 0.4,
    ageMs: 30,
    restNorm: 9.8,
    ...change,
  });
  const codes = (change: Partial<SensorView>) =>
    sensorProblems([well('chest', change), well('trailArm')]).map((p) => p.code);

  it('finds nothing wrong with two that are well', () => {
    expect(codes({})).toEqual([]);
  });

  it('names what is wrong', () => {
    expect(codes({ state: 'lost' })).toEqual(['not-streaming']);
    expect(codes({ ageMs: 4000 })).toEqual(['stale']);
    expect(codes({ rateHz: 61 })).toEqual(['slow']);
    expect(codes({ lostPct: 12 })).toEqual(['lossy']);
    expect(codes({ restNorm: null })).toEqual(['no-rest']);
    // g where m/s^2 is expected
    expect(codes({ restNorm: 1 })).toEqual(['norm']);
    expect(sensorProblems([]).map((p) => p.sensor)).toEqual(['chest', 'trailArm']);
  });
});
