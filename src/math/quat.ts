import { type Vec3, norm, vec3 } from './vec3.ts';

/**
 * A unit quaternion, scalar `w` first, active: `rotate(q, v)` turns a vector given in the segment
 * (or sensor) frame into the reference frame. `q` and `-q` are the same rotation.
 */
export interface Quat {
  readonly w: number;
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** Rows of the rotation matrix: `v_ref = M v_seg`. */
export type Matrix3 = readonly [Row3, Row3, Row3];
type Row3 = readonly [number, number, number];

export const quat = (w: number, x: number, y: number, z: number): Quat => ({ w, x, y, z });
export const IDENTITY: Quat = quat(1, 0, 0, 0);
export const conjugate = (q: Quat): Quat => quat(q.w, -q.x, -q.y, -q.z);

/** Hamilton product: first `b`, then `a`, in the reference frame. */
export const multiply = (a: Quat, b: Quat): Quat =>
  quat(
    a.w * b.w - a.x * b.x - a.y * b.y - a.z * b.z,
    a.w * b.x + a.x * b.w + a.y * b.z - a.z * b.y,
    a.w * b.y - a.x * b.z + a.y * b.w + a.z * b.x,
    a.w * b.z + a.x * b.y - a.y * b.x + a.z * b.w,
  );

/** `conj(a) b`: `b` seen from `a`. */
export const relative = (a: Quat, b: Quat): Quat => multiply(conjugate(a), b);

export const quatNorm = (q: Quat): number =>
  Math.sqrt(q.w * q.w + q.x * q.x + q.y * q.y + q.z * q.z);

/** Unit quaternion along `q`; identity where `q` has no direction (zero or not finite). */
export function normaliseQuat(q: Quat): Quat {
  const n = quatNorm(q);
  if (!(n > 0) || !Number.isFinite(n)) return IDENTITY;
  return quat(q.w / n, q.x / n, q.y / n, q.z / n);
}

/** `q v q*`. */
export function rotate(q: Quat, v: Vec3): Vec3 {
  const tx = 2 * (q.y * v.z - q.z * v.y);
  const ty = 2 * (q.z * v.x - q.x * v.z);
  const tz = 2 * (q.x * v.y - q.y * v.x);
  return vec3(
    v.x + q.w * tx + q.y * tz - q.z * ty,
    v.y + q.w * ty + q.z * tx - q.x * tz,
    v.z + q.w * tz + q.x * ty - q.y * tx,
  );
}

/** `q* v q`: a reference vector seen from the segment. */
export const rotateInverse = (q: Quat, v: Vec3): Vec3 => rotate(conjugate(q), v);

/** Rotation by the vector `r` (rad, direction = axis, length = angle). Exact for any length. */
export function fromRotationVector(r: Vec3): Quat {
  const angle = norm(r);
  // sin(a/2)/a, by its series where the quotient would lose digits
  const k = angle < 1e-4 ? 0.5 - (angle * angle) / 48 : Math.sin(angle / 2) / angle;
  return quat(Math.cos(angle / 2), r.x * k, r.y * k, r.z * k);
}

/** Rotation vector (rad) of the shorter way round. */
export function toRotationVector(q: Quat): Vec3 {
  const s = q.w < 0 ? -1 : 1;
  const n = Math.sqrt(q.x * q.x + q.y * q.y + q.z * q.z);
  const k = n < 1e-12 ? 2 * s : (2 * s * Math.atan2(n, Math.abs(q.w))) / n;
  return vec3(q.x * k, q.y * k, q.z * k);
}

export const aboutX = (a: number): Quat => quat(Math.cos(a / 2), Math.sin(a / 2), 0, 0);
export const aboutY = (a: number): Quat => quat(Math.cos(a / 2), 0, Math.sin(a / 2), 0);
export const aboutZ = (a: number): Quat => quat(Math.cos(a / 2), 0, 0, Math.sin(a / 2));

export function toMatrix(q: Quat): Matrix3 {
  const { w, x, y, z } = q;
  return [
    [1 - 2 * (y * y + z * z), 2 * (x * y - w * z), 2 * (x * z + w * y)],
    [2 * (x * y + w * z), 1 - 2 * (x * x + z * z), 2 * (y * z - w * x)],
    [2 * (x * z - w * y), 2 * (y * z + w * x), 1 - 2 * (x * x + y * y)],
  ];
}

/** From the three axes of the segment written in the reference frame (orthonormal, right-handed). */
export function fromAxes(xAxis: Vec3, yAxis: Vec3, zAxis: Vec3): Quat {
  const trace = xAxis.x + yAxis.y + zAxis.z;
  if (trace > 0) {
    const s = 2 * Math.sqrt(trace + 1);
    return normaliseQuat(
      quat(s / 4, (yAxis.z - zAxis.y) / s, (zAxis.x - xAxis.z) / s, (xAxis.y - yAxis.x) / s),
    );
  }
  if (xAxis.x >= yAxis.y && xAxis.x >= zAxis.z) {
    const s = 2 * Math.sqrt(1 + xAxis.x - yAxis.y - zAxis.z);
    return normaliseQuat(
      quat((yAxis.z - zAxis.y) / s, s / 4, (xAxis.y + yAxis.x) / s, (zAxis.x + xAxis.z) / s),
    );
  }
  if (yAxis.y >= zAxis.z) {
    const s = 2 * Math.sqrt(1 + yAxis.y - xAxis.x - zAxis.z);
    return normaliseQuat(
      quat((zAxis.x - xAxis.z) / s, (xAxis.y + yAxis.x) / s, s / 4, (yAxis.z + zAxis.y) / s),
    );
  }
  const s = 2 * Math.sqrt(1 + zAxis.z - xAxis.x - yAxis.y);
  return normaliseQuat(
    quat((xAxis.y - yAxis.x) / s, (zAxis.x + xAxis.z) / s, (yAxis.z + zAxis.y) / s, s / 4),
  );
}

/** Spherical interpolation the shorter way, `t` in 0..1. */
export function slerp(a: Quat, b: Quat, t: number): Quat {
  let d = a.w * b.w + a.x * b.x + a.y * b.y + a.z * b.z;
  const sign = d < 0 ? -1 : 1;
  d *= sign;
  let ka = 1 - t;
  let kb = t * sign;
  if (d < 0.9995) {
    const angle = Math.acos(d);
    const s = Math.sin(angle);
    ka = Math.sin((1 - t) * angle) / s;
    kb = (Math.sin(t * angle) / s) * sign;
  }
  return normaliseQuat(
    quat(ka * a.w + kb * b.w, ka * a.x + kb * b.x, ka * a.y + kb * b.y, ka * a.z + kb * b.z),
  );
}

/** Angle between two orientations, rad, 0..pi. */
export const quatAngle = (a: Quat, b: Quat): number => {
  const d = relative(a, b);
  return 2 * Math.atan2(Math.sqrt(d.x * d.x + d.y * d.y + d.z * d.z), Math.abs(d.w));
};

/** Mirror in the sagittal plane (x-y plane, z changes sign): left golfer to right equivalent. */
export const mirrorQuat = (q: Quat): Quat => quat(q.w, -q.x, -q.y, q.z);
