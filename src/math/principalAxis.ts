import { type Vec3, dot, vec3 } from './vec3.ts';

/** Second moments of a set of vectors about the origin (not the mean): the sums of x*x, x*y and so on. */
export interface Moments {
  readonly xx: number;
  readonly xy: number;
  readonly xz: number;
  readonly yy: number;
  readonly yz: number;
  readonly zz: number;
}

export function moments(vectors: readonly Vec3[]): Moments {
  let [xx, xy, xz, yy, yz, zz] = [0, 0, 0, 0, 0, 0];
  for (const v of vectors) {
    xx += v.x * v.x;
    xy += v.x * v.y;
    xz += v.x * v.z;
    yy += v.y * v.y;
    yz += v.y * v.z;
    zz += v.z * v.z;
  }
  return { xx, xy, xz, yy, yz, zz };
}

export interface PrincipalAxis {
  /** Unit vector of the largest moment; its sign is arbitrary. */
  readonly axis: Vec3;
  /** Largest eigenvalue over the sum of all, 1/3..1; 0 where there is no movement at all. */
  readonly explained: number;
}

/** First principal axis by power iteration; exact for a dominant axis. */
export function principalAxis(m: Moments): PrincipalAxis {
  const trace = m.xx + m.yy + m.zz;
  if (!(trace > 0) || !Number.isFinite(trace)) return { axis: vec3(0, 0, 1), explained: 0 };
  let axis = START;
  for (let i = 0; i < 200; i++) {
    const next = apply(m, axis);
    const n = Math.hypot(next.x, next.y, next.z);
    if (!(n > 0)) break;
    axis = vec3(next.x / n, next.y / n, next.z / n);
  }
  return { axis, explained: dot(axis, apply(m, axis)) / trace };
}

const apply = (m: Moments, v: Vec3): Vec3 =>
  vec3(
    m.xx * v.x + m.xy * v.y + m.xz * v.z,
    m.xy * v.x + m.yy * v.y + m.yz * v.z,
    m.xz * v.x + m.yz * v.y + m.zz * v.z,
  );

/** Along no axis and in no plane that a sensor is likely to be strapped by: hardly ever orthogonal to the one sought. */
const START: Vec3 = vec3(0.53, 0.67, 0.52);
