import { type Quat, quat } from './quat.ts';
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

/**
 * `q` turned on by the rotation vector (x, y, z), rad, body frame: exact for any length. Written
 * out, since it runs for every sample.
 */
export function turnBy(q: Quat, x: number, y: number, z: number): Quat {
  const half = Math.sqrt(x * x + y * y + z * z) / 2;
  const c = Math.cos(half);
  // sin(a/2)/a, by its series where the quotient would lose digits
  const k = half < 1e-4 ? 0.5 - (half * half) / 12 : Math.sin(half) / (2 * half);
  const w = c * q.w - k * (x * q.x + y * q.y + z * q.z);
  const i = c * q.x + k * (x * q.w + z * q.y - y * q.z);
  const j = c * q.y + k * (y * q.w + x * q.z - z * q.x);
  const l = c * q.z + k * (z * q.w + y * q.x - x * q.y);
  const n = 1 / Math.sqrt(w * w + i * i + j * j + l * l);
  return quat(w * n, i * n, j * n, l * n);
}
