import type { Matrix3 } from './quat.ts';

/**
 * Angles (rad) of an intrinsic sequence, in the order of its axes. Middle angles come from atan2
 * rather than asin or acos, which lose digits near their ends. Formulas: Baker 2001; Wu et al. 2005.
 */
export type EulerAngles = readonly [number, number, number];

/** Ry(a) Rx(b) Rz(c); singular at b = +-90 deg. */
export const eulerYXZ = (m: Matrix3): EulerAngles => [
  Math.atan2(m[0][2], m[2][2]),
  Math.atan2(-m[1][2], Math.hypot(m[0][2], m[2][2])),
  Math.atan2(m[1][0], m[1][1]),
];

/** Rz(a) Rx(b) Ry(c); singular at b = +-90 deg. */
export const eulerZXY = (m: Matrix3): EulerAngles => [
  Math.atan2(-m[0][1], m[1][1]),
  Math.atan2(m[2][1], Math.hypot(m[0][1], m[1][1])),
  Math.atan2(-m[2][0], m[2][2]),
];

/** Ry(a) Rz(b) Rx(c); singular at b = +-90 deg. */
export const eulerYZX = (m: Matrix3): EulerAngles => [
  Math.atan2(-m[2][0], m[0][0]),
  Math.atan2(m[1][0], Math.hypot(m[2][0], m[0][0])),
  Math.atan2(-m[1][2], m[1][1]),
];

/** Rx(a) Rz(b) Ry(c); singular at b = +-90 deg. */
export const eulerXZY = (m: Matrix3): EulerAngles => [
  Math.atan2(m[2][1], m[1][1]),
  Math.atan2(-m[0][1], Math.hypot(m[2][1], m[1][1])),
  Math.atan2(m[0][2], m[0][0]),
];

/** Ry(a) Rx(b) Ry(c) with b in [-180, 0] deg, the ISB form for the humerus; singular at b = 0 and -180. */
export const eulerYXY = (m: Matrix3): EulerAngles => [
  Math.atan2(-m[0][1], -m[2][1]),
  -Math.atan2(Math.hypot(m[0][1], m[2][1]), m[1][1]),
  Math.atan2(-m[1][0], m[1][2]),
];
