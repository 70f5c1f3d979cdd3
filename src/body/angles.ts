import { degrees, radians, wrapPi } from '../math/angle.ts';
import { eulerYXY } from '../math/euler.ts';
import { type Quat, aboutY, multiply, relative, toMatrix } from '../math/quat.ts';
import type { JointAngles } from './segments.ts';

/** Elevation (rad) between which plane and external rotation mean something: 30-150 deg. */
const VALID_ELEVATION = { low: radians(30), high: radians(150) };
/** Nearer to the pole than this (rad) the Y-X-Y outer angles are not defined. */
const POLE = 1e-6;

/** Thorax to global, right-handed golfer, rad. Intrinsic Y-X-Z; obliquity and tilt of Baker 2001. */
export interface ThoraxAngles {
  /** Toward the target (left) +, from the facing of the global frame. */
  readonly turn: number;
  /** Lateral bend, trail (right) side +. */
  readonly lateral: number;
  /** Forward +. */
  readonly flexion: number;
  /** Angle from upright, 0..pi. */
  readonly lean: number;
}

/** Flexion, lateral bend and lean depend on the vertical alone: heading cannot touch them. */
export function thoraxAngles(q: Quat): ThoraxAngles {
  const up = verticalInSegment(q);
  const horizontal = Math.hypot(up.x, up.z);
  return {
    turn: Math.atan2(2 * (q.x * q.z + q.w * q.y), 1 - 2 * (q.x * q.x + q.y * q.y)),
    lateral: Math.atan2(-up.z, Math.hypot(up.x, up.y)),
    flexion: -Math.atan2(up.x, up.y),
    lean: Math.atan2(horizontal, up.y),
  };
}

/** Row 1 of the rotation matrix: the global vertical seen from the segment. */
function verticalInSegment(q: Quat): { x: number; y: number; z: number } {
  return {
    x: 2 * (q.x * q.y + q.w * q.z),
    y: 1 - 2 * (q.x * q.x + q.z * q.z),
    z: 2 * (q.y * q.z - q.w * q.x),
  };
}

/** Humerus in the thorax, right side, rad. ISB Y-X-Y (Wu et al. 2005); `null` where not defined at the pole. */
export interface HumerusAngles {
  /** 0..pi from hanging. */
  readonly elevation: number;
  /** 0 abduction, pi/2 forward flexion. */
  readonly plane: number | null;
  /** Outward +. */
  readonly externalRotation: number | null;
  /** Elevation is 30-150 deg. */
  readonly valid: boolean;
}

export function humerusAngles(inThorax: Quat): HumerusAngles {
  const [a, b, c] = eulerYXY(toMatrix(inThorax));
  const elevation = -b;
  const defined = elevation > POLE && elevation < Math.PI - POLE;
  return {
    elevation,
    plane: defined ? a : null,
    externalRotation: defined ? -c : null,
    valid: elevation >= VALID_ELEVATION.low && elevation <= VALID_ELEVATION.high,
  };
}

/** Axial rotation by swing and twist, defined at the lower pole too (not at the upper one), outward +, rad. */
export const torsionOutward = (inThorax: Quat): number =>
  -wrapPi(2 * Math.atan2(inThorax.y, inThorax.w));

/** Gain of flexion between two thorax orientations, parted into what the turn explains and what was added; rad. */
export interface FlexionGain {
  readonly gain: number;
  readonly turnExplained: number;
  readonly added: number;
  readonly leanChange: number;
}

/**
 * Turning a leaning trunk about its own axis changes flexion without any bending. That part is
 * found by turning `a` alone about its Y by the own-axis twist between `a` and `b`.
 */
export function flexionGain(a: Quat, b: Quat): FlexionGain {
  const rel = relative(a, b);
  const twist = wrapPi(2 * Math.atan2(rel.y, rel.w));
  const from = thoraxAngles(a);
  const turned = thoraxAngles(multiply(a, aboutY(twist)));
  const to = thoraxAngles(b);
  return {
    gain: wrapPi(to.flexion - from.flexion),
    turnExplained: wrapPi(turned.flexion - from.flexion),
    added: wrapPi(to.flexion - turned.flexion),
    leanChange: to.lean - from.lean,
  };
}

/** All joint angles of one instant, degrees. `turnZero` is the turn at the address, rad. */
export function jointAngles(thorax: Quat, humerus: Quat, turnZero: number): JointAngles {
  const t = thoraxAngles(thorax);
  const h = humerusAngles(relative(thorax, humerus));
  return {
    flexionDeg: degrees(t.flexion),
    lateralDeg: degrees(t.lateral),
    leanDeg: degrees(t.lean),
    turnDeg: degrees(wrapPi(t.turn - turnZero)),
    elevationDeg: degrees(h.elevation),
    planeDeg: h.plane === null ? null : degrees(h.plane),
    externalRotationDeg: h.externalRotation === null ? null : degrees(h.externalRotation),
    valid: h.valid,
  };
}
