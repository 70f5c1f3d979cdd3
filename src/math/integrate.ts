import { type Quat, fromRotationVector, multiply, normaliseQuat } from './quat.ts';
import { type Vec3, vec3 } from './vec3.ts';

/**
 * Rotation vector (rad, body frame) of a rate that goes in a straight line from `from` to `to`
 * (rad/s) within `dtS`: mean rate plus the first coning term `dt^2/12 (from x to)`. Exact for a
 * steady rate; the error of a smooth one falls with the fourth power of `dtS`.
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

/** The attitude after `dtS`, body rates `from` and `to` (rad/s) at its two ends. */
export const integrateRate = (q: Quat, from: Vec3, to: Vec3, dtS: number): Quat =>
  normaliseQuat(multiply(q, fromRotationVector(rotationBetween(from, to, dtS))));
