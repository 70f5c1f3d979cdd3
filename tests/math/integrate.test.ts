import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { identity, rotationBetween, turnBy } from '../../src/math/integrate.ts';
import { fromRotationVector, quatAngle, quatNorm } from '../../src/math/quat.ts';
import { type Vec3, vec3 } from '../../src/math/vec3.ts';

const rate = fc.double({ min: -40, max: 40, noNaN: true });
const anyRate = fc.tuple(rate, rate, rate).map(([x, y, z]) => vec3(x, y, z));

/** Attitude after 1 s of the body rate `of(t)`, by steps of 1/n s. */
function integrate(of: (t: number) => Vec3, n: number): ReturnType<typeof identity> {
  const q = identity();
  for (let i = 0; i < n; i++) {
    const turn = rotationBetween(of(i / n), of((i + 1) / n), 1 / n);
    turnBy(q, turn.x, turn.y, turn.z);
  }
  return q;
}

describe('integration of an angular rate', () => {
  it('is exact for a steady rate, whatever the step', () => {
    fc.assert(
      fc.property(anyRate, fc.integer({ min: 1, max: 50 }), (w, n) => {
        expect(
          quatAngle(
            integrate(() => w, n),
            fromRotationVector(w),
          ),
        ).toBeLessThan(1e-12 * (1 + n));
      }),
    );
  });

  // Coning: a known hard case with a closed form (e.g. Savage 1998, J Guid Control Dyn 21:19).
  // The body z axis circles the vertical at angle A, twice a second, without net spin of the frame.
  it('follows coning to within a fiftieth of a degree at 100 Hz', () => {
    const A = 0.1;
    const w = 2 * Math.PI * 2;
    const coning = (t: number): Vec3 =>
      vec3(
        -w * Math.sin(A) * Math.sin(w * t),
        w * Math.sin(A) * Math.cos(w * t),
        -w * (1 - Math.cos(A)),
      );
    // truth: a rotation by A about (cos wt, sin wt, 0); both start from it at t = 0
    const start = fromRotationVector(vec3(A, 0, 0));
    const q = { ...start };
    for (let i = 0; i < 100; i++) {
      const turn = rotationBetween(coning(i / 100), coning((i + 1) / 100), 0.01);
      turnBy(q, turn.x, turn.y, turn.z);
    }
    const truth = fromRotationVector(vec3(A * Math.cos(w), A * Math.sin(w), 0));
    expect((quatAngle(q, truth) * 180) / Math.PI).toBeLessThan(0.02);
  });

  it('gains nearly a factor of four with each halving of the step', () => {
    const of = (t: number): Vec3 =>
      vec3(5 * Math.sin(7 * t), 4 * Math.cos(5 * t), 3 * Math.sin(9 * t + 1));
    const truth = integrate(of, 20_000);
    const [coarse, fine] = [integrate(of, 50), integrate(of, 100)].map((q) => quatAngle(q, truth));
    expect(coarse).toBeLessThan(0.02);
    expect(fine).toBeLessThan((coarse ?? 0) / 3.5);
  });

  it('keeps unit length over a million steps', () => {
    const q = identity();
    for (let i = 0; i < 1_000_000; i++) turnBy(q, 0.01, -0.02, 0.03);
    expect(quatNorm(q)).toBeCloseTo(1, 14);
  });
});
