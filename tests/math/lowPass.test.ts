import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type LowPass3,
  createLowPass3,
  lowPassCoefficients,
  restartLowPass,
  startLowPass,
  stepLowPass,
} from '../../src/math/lowPass.ts';

const TAU_S = 0.5;
/** Corner of the filter, Hz. */
const CORNER = Math.SQRT2 / (2 * Math.PI * TAU_S);

/** A filter past its first mean, resting at zero. */
function settled(): LowPass3 {
  const state = createLowPass3();
  startLowPass(state, 0, 0, 0);
  state.averagedS = TAU_S;
  return state;
}

/** Largest output for a sine of the given frequency, once it has settled. */
function gainAt(hz: number, periodS: number): number {
  const c = lowPassCoefficients(TAU_S, periodS);
  const state = settled();
  let peak = 0;
  for (let t = 0; t < 20; t += periodS) {
    stepLowPass(state, c, Math.sin(2 * Math.PI * hz * t), 0, 0);
    if (t > 10) peak = Math.max(peak, Math.abs(state.value.x));
  }
  return peak;
}

describe('the second-order Butterworth low-pass', () => {
  // |H| = 1 / sqrt(1 + (f/fc)^4): Butterworth 1930, any textbook on filters
  it.each([0.25, 0.5, 1, 2, 4])('has the published gain at %d times its corner', (ratio) => {
    const expected = 1 / Math.sqrt(1 + ratio ** 4);
    for (const rateHz of [50, 104, 200])
      expect(gainAt(ratio * CORNER, 1 / rateHz)).toBeCloseTo(expected, 1.5);
    expect(gainAt(ratio * CORNER, 1 / 1000)).toBeCloseTo(expected, 3);
  });

  it('leaves a steady value alone, exactly', () => {
    fc.assert(
      fc.property(fc.double({ min: -100, max: 100, noNaN: true }), (v) => {
        const state = createLowPass3();
        const c = lowPassCoefficients(TAU_S, 0.01);
        for (let i = 0; i < 200; i++) stepLowPass(state, c, v, -v, 2 * v);
        expect(state.value.x).toBeCloseTo(v, 10);
        expect(state.value.z).toBeCloseTo(2 * v, 10);
      }),
    );
  });

  it('goes equally far in one step or in many while its input stands still', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 40 }),
        fc.double({ min: 0.001, max: 1, noNaN: true }),
        (n, dt) => {
          const [one, many] = [settled(), settled()];
          stepLowPass(one, lowPassCoefficients(TAU_S, dt), 1, 2, 3);
          const c = lowPassCoefficients(TAU_S, dt / n);
          for (let i = 0; i < n; i++) stepLowPass(many, c, 1, 2, 3);
          expect(many.value.y).toBeCloseTo(one.value.y, 10);
          expect(many.rate.y).toBeCloseTo(one.rate.y, 8);
        },
      ),
    );
  });

  it('is the plain mean until its time constant has passed', () => {
    const state = createLowPass3();
    const c = lowPassCoefficients(TAU_S, 0.1);
    for (const v of [1, 2, 6]) stepLowPass(state, c, v, 0, 0);
    expect(state.value.x).toBeCloseTo(3, 12);
  });

  it('after a restart weighs the past by the time it is given', () => {
    const state = settled();
    restartLowPass(state, 0.1);
    stepLowPass(state, lowPassCoefficients(TAU_S, 0.1), 4, 0, 0);
    expect(state.value.x).toBeCloseTo(2, 12);
    restartLowPass(state, 0);
    stepLowPass(state, lowPassCoefficients(TAU_S, 0.1), 7, 0, 0);
    expect(state.value.x).toBe(7);
  });
});
