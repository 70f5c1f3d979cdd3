import { type Quat, quat } from './quat.ts';
import { type Vec3, vec3 } from './vec3.ts';

/**
 * Rotation vector (rad, body frame) of a rate that goes in a straight line from `from` to `to`
 * (rad/s) within `dtS`: mean rate plus the first coning term `dt^2/12 (from x to)`. Exact for a
 * steady rate; the error of a smooth one falls with the square of `dtS`.
 */
export function rotationBetween(from: Vec3, to: Vec3, dtS: number): Vec3 {
  const h = dtS / 2;
  const k = (dtS * dtS) / 12;
  return vec3(
    h * (from.x + to.x) + k * (from.y * to.z - from.z * to.y),
    h * (from.y + to.y) + k * (from.z * to.x - from.x * to.z),
    h * (from.z + to.z) + k * (from.x * to.y - from.y * to.x),
  );
}

/** A quaternion that is changed in place. */
export type MutableQuat = { -readonly [K in keyof Quat]: Quat[K] };

export const identity = (): MutableQuat => ({ w: 1, x: 0, y: 0, z: 0 });

/** Turns `q` (in place) by the rotation vector (x, y, z), rad, body frame: exact for any length. */
export function turnBy(q: MutableQuat, x: number, y: number, z: number): void {
  const half = Math.sqrt(x * x + y * y + z * z) / 2;
  // sin(a/2)/a, by its series where the quotient would lose digits
  const k = half < 1e-4 ? 0.5 - (half * half) / 12 : Math.sin(half) / (2 * half);
  setProduct(q, q, quat(Math.cos(half), k * x, k * y, k * z));
}

/** `target` becomes `a b`, of unit length. */
export function setProduct(target: MutableQuat, a: Quat, b: Quat): void {
  const w = a.w * b.w - a.x * b.x - a.y * b.y - a.z * b.z;
  const x = a.w * b.x + a.x * b.w + a.y * b.z - a.z * b.y;
  const y = a.w * b.y - a.x * b.z + a.y * b.w + a.z * b.x;
  const z = a.w * b.z + a.x * b.y - a.y * b.x + a.z * b.w;
  const k = 1 / Math.sqrt(w * w + x * x + y * y + z * z);
  target.w = w * k;
  target.x = x * k;
  target.y = y * k;
  target.z = z * k;
}
