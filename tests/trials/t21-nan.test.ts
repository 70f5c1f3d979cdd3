// psiphi75/ahrs#4: NaN from the filter, for ever.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { radians } from '../../src/math/angle.ts';
import { type Quat, aboutX, aboutZ, multiply, quatNorm } from '../../src/math/quat.ts';
import { ZERO, vec3 } from '../../src/math/vec3.ts';
import type { Orientation } from '../../src/orientation/orientation.ts';
import { createTrack, stepTrack } from '../../src/orientation/track.ts';
import { named } from '../orientation/allFilters.ts';
import { inclinationBetween, readingAt, sample } from '../orientation/imu.ts';

const FULL_SCALE = radians(2000);
const odd = fc.oneof(
  { weight: 4, arbitrary: fc.double({ min: -20, max: 20, noNaN: true }) },
  fc.constantFrom(0, -0, NaN, Infinity, -Infinity, 1e308, -1e308, 5e-324, 1e-200),
  fc.constantFrom(FULL_SCALE, -FULL_SCALE, 16 * 9.80665, -16 * 9.80665),
);
const oddVec = fc.tuple(odd, odd, odd).map(([x, y, z]) => vec3(x, y, z));
const oddStep = fc.oneof(
  { weight: 4, arbitrary: fc.constant(0.01) },
  fc.constantFrom(0, -0.01, NaN, Infinity, -Infinity, 1e-9, 0.1, 5, 1e9, 1e308),
);
/** The same odd reading may come once or stay for two seconds. */
const oddRun = fc.record({
  acc: oddVec,
  gyro: oddVec,
  stepS: oddStep,
  times: fc.constantFrom(1, 1, 2, 200),
});
const oddInput = fc.array(oddRun, { maxLength: 12 });

const tilted = multiply(aboutX(radians(35)), aboutZ(radians(-50)));

/** Odd input can look like rest and teach a bias of up to 2 deg/s, which costs up to this until it is unlearned. */
const FEW_DEG = 3.5;

const isAttitude = (q: Quat): boolean => Math.abs(quatNorm(q) - 1) < 1e-9;

/** JSON writes NaN and infinity as null; two nulls are ours: nothing known yet. */
const holdsOnlyNumbers = (state: unknown): boolean =>
  !/null/.test(
    JSON.stringify(state).replace(
      /"(coefficients|last|waiting|deviceTimeS|arrivalTimeS)":null/g,
      '',
    ),
  );

describe.each(named)('%s', (_, filter) => {
  it('never shows a number that is none, and is upright again a few seconds after', () => {
    fc.assert(
      fc.property(oddInput, (runs) => {
        const state = filter.create();
        for (const { acc, gyro, stepS, times } of runs)
          for (let i = 0; i < times; i++)
            expect(isAttitude(filter.update(state, sample(0, acc, gyro), stepS))).toBe(true);
        expect(holdsOnlyNumbers(state)).toBe(true);
        let q: Quat | null = null;
        for (let i = 0; i < 600; i++) q = filter.update(state, readingAt(0, tilted, ZERO), 0.01);
        expect(q && inclinationBetween(q, tilted)).toBeLessThan(FEW_DEG);
      }),
      { numRuns: 100 },
    );
  });

  it.each([
    ['zeros', ZERO, ZERO],
    ['one constant', vec3(1, 1, 1), vec3(1, 1, 1)],
    ['full scale', vec3(157, 157, -157), vec3(FULL_SCALE, FULL_SCALE, -FULL_SCALE)],
    ['NaN', vec3(NaN, NaN, NaN), vec3(NaN, NaN, NaN)],
  ])('recovers from ten seconds of %s', (_what, acc, gyro) => {
    const state = filter.create();
    for (let i = 0; i < 1000; i++) filter.update(state, sample(0, acc, gyro), 0.01);
    let q: Quat | null = null;
    for (let i = 0; i < 500; i++) q = filter.update(state, readingAt(0, tilted, ZERO), 0.01);
    expect(q && inclinationBetween(q, tilted)).toBeLessThan(1);
  });
});

describe('the track', () => {
  it('never shows a number that is none, goes only forward, and recovers', () => {
    fc.assert(
      fc.property(oddInput, (runs) => {
        const state = createTrack();
        const out: Orientation[] = [];
        let t = 0;
        for (const { acc, gyro, stepS, times } of runs)
          for (let i = 0; i < times; i++) {
            stepTrack(state, sample(t + stepS, acc, gyro), (o) => out.push(o));
            if (Math.abs(stepS) < 10) t += Math.max(stepS, 0);
          }
        const startS = Math.max(t, state.last?.timeS ?? 0, state.waiting?.timeS ?? 0);
        for (let i = 1; i <= 600 && startS < 1e6; i++)
          stepTrack(state, readingAt(startS + i / 100, tilted, ZERO), (o) => out.push(o));
        expect(holdsOnlyNumbers(state)).toBe(true);
        expect(holdsOnlyNumbers(out)).toBe(true);
        expect(out.every((o) => isAttitude(o.q))).toBe(true);
        expect(out.every((o, i) => i === 0 || o.timeS > (out[i - 1]?.timeS ?? 0))).toBe(true);
        const last = out.at(-1);
        if (startS < 1e6) expect(last && inclinationBetween(last.q, tilted)).toBeLessThan(FEW_DEG);
      }),
      { numRuns: 100 },
    );
  });
});
