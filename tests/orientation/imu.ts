import { STANDARD_GRAVITY } from '../../src/math/gravity.ts';
import { degrees, wrapDeg } from '../../src/math/angle.ts';
import { type Quat, conjugate, multiply, rotateInverse } from '../../src/math/quat.ts';
import { type Vec3, UNIT_Y, ZERO, add, angleBetween, vec3 } from '../../src/math/vec3.ts';
import type { ImuSample } from '../../src/sensors/sample.ts';

export const UP: Vec3 = vec3(0, STANDARD_GRAVITY, 0);

export const sample = (timeS: number, acc: Vec3, gyro: Vec3 = ZERO): ImuSample => ({
  sensor: 'chest',
  timeS,
  acc,
  gyro,
  deviceTimeS: null,
  arrivalTimeS: null,
  saturated: false,
});

/** What an ideal sensor reads at attitude `q` (sensor to Y-up earth), turning at `gyro` and held in place. */
export const readingAt = (timeS: number, q: Quat, gyro: Vec3, bias: Vec3 = ZERO): ImuSample =>
  sample(timeS, rotateInverse(q, UP), add(gyro, bias));

/** Angle between the vertical of two attitudes, deg: what heading cannot touch. */
export const inclinationBetween = (a: Quat, b: Quat): number =>
  degrees(angleBetween(rotateInverse(a, UNIT_Y), rotateInverse(b, UNIT_Y)));

/** Angle of the vertical part of the rotation from `b` to `a`, deg: how far their headings differ. */
export function headingBetween(a: Quat, b: Quat): number {
  const e = multiply(a, conjugate(b));
  return wrapDeg(degrees(2 * Math.atan2(e.y, e.w)));
}
