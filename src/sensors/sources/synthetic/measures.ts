import { STANDARD_GRAVITY } from '../../../math/gravity.ts';
import { degrees, wrapPi } from '../../../math/angle.ts';
import {
  type Quat,
  aboutY,
  multiply,
  relative,
  rotateInverse,
  toMatrix,
} from '../../../math/quat.ts';
import { UNIT_Y, type Vec3, subtract } from '../../../math/vec3.ts';

/**
 * Exact measures of the simulated body, written from the definitions (ISB frames: Wu & Cavanagh 1995,
 * Wu et al. 2005; thorax Y-X-Z: Baker 2001; humerus Y-X-Y; true axial rotation: Aliaj et al. 2021)
 * and shared with nothing that analyses, so that one can be tested against the other.
 */
export interface SegmentState {
  /** Thorax to global. */
  readonly thorax: Quat;
  /** Humerus to global. */
  readonly humerus: Quat;
  /** rad/s, thorax frame. */
  readonly thoraxRate: Vec3;
  /** rad/s, humerus frame. */
  readonly humerusRate: Vec3;
}

const upSeenFrom = (q: Quat): Vec3 => rotateInverse(q, UNIT_Y);

/** Forward +, rad. */
export function flexionOf(thorax: Quat): number {
  const u = upSeenFrom(thorax);
  return -Math.atan2(u.x, u.y);
}

/** To the trail side +, rad. */
export const lateralOf = (thorax: Quat): number =>
  -Math.asin(Math.min(1, Math.max(-1, upSeenFrom(thorax).z)));

/** Angle of the trunk from upright, rad, 0..pi. */
export function leanOf(thorax: Quat): number {
  const u = upSeenFrom(thorax);
  return Math.atan2(Math.hypot(u.x, u.z), u.y);
}

/** Heading of the thorax, toward the target +, rad, (-pi, pi]. */
export function turnOf(thorax: Quat): number {
  const m = toMatrix(thorax);
  return Math.atan2(m[0][2], m[2][2]);
}

/** Flexion that turning about the trunk's own axis from `a` to `b` explains, and the rest; rad. */
export function flexionParts(a: Quat, b: Quat): { explained: number; added: number } {
  const rel = relative(a, b);
  const tau = wrapPi(2 * Math.atan2(rel.y, rel.w));
  const turned = flexionOf(multiply(a, aboutY(tau)));
  return { explained: turned - flexionOf(a), added: flexionOf(b) - turned };
}

/** Humerus in the thorax, ISB Y-X-Y, rad. */
export function armAnglesOf(s: Pick<SegmentState, 'thorax' | 'humerus'>): {
  readonly plane: number;
  readonly elevation: number;
  readonly externalRotation: number;
} {
  const m = toMatrix(relative(s.thorax, s.humerus));
  return {
    plane: Math.atan2(-m[0][1], -m[2][1]),
    elevation: Math.atan2(Math.hypot(m[0][1], m[2][1]), m[1][1]),
    externalRotation: -Math.atan2(-m[1][0], m[1][2]),
  };
}

/** Rate of true axial rotation of the humerus in the thorax, outward +, rad/s. */
function axialRate(s: SegmentState): number {
  const thoraxRate = rotateInverse(relative(s.thorax, s.humerus), s.thoraxRate);
  return -subtract(s.humerusRate, thoraxRate).y;
}

/** Its integral between two times by Simpson's rule, rad. */
export function axialRotation(
  at: (timeS: number) => SegmentState,
  fromS: number,
  toS: number,
  intervals = 200,
): number {
  const h = (toS - fromS) / intervals;
  let sum = 0;
  for (let i = 0; i <= intervals; i++) {
    const weight = i === 0 || i === intervals ? 1 : i % 2 === 1 ? 4 : 2;
    sum += weight * axialRate(at(fromS + i * h));
  }
  return (sum * h) / 3;
}

/** Names and units as in a repetition's measures. */
export interface TruthMeasures {
  readonly flexionTopDeg: number;
  readonly flexionCatchDeg: number;
  readonly flexionGainDeg: number;
  readonly turnExplainedDeg: number;
  readonly addedFlexionDeg: number;
  readonly leanChangeDeg: number;
  readonly turnTopDeg: number;
  readonly turnTowardTargetDeg: number;
  readonly lateralChangeDeg: number;
  readonly externalRotationTopDeg: number;
  readonly elevationTopDeg: number;
  readonly keptRotationDeg: number;
  readonly chestLeadMs: number | null;
  readonly releaseToCatchMs: number | null;
  readonly fallCm: number | null;
}

export interface MeasureTimes {
  /** Start of the chest (rehearsal) or turn reversal (ball), s. */
  readonly fromS: number;
  /** Catch or delivery, s. */
  readonly toS: number;
  readonly armOnsetS: number | null;
  readonly catchS: number | null;
}

/** @param addressTurn heading of the thorax at the address reference, rad. */
export function measuresOf(
  at: (timeS: number) => SegmentState,
  times: MeasureTimes,
  addressTurn: number,
): TruthMeasures {
  const from = at(times.fromS);
  const to = at(times.toS);
  const [a, b] = [from.thorax, to.thorax];
  const parts = flexionParts(a, b);
  const arm = armAnglesOf(from);
  const fallS = times.catchS === null ? null : times.catchS - times.fromS;
  return {
    flexionTopDeg: degrees(flexionOf(a)),
    flexionCatchDeg: degrees(flexionOf(b)),
    flexionGainDeg: degrees(flexionOf(b) - flexionOf(a)),
    turnExplainedDeg: degrees(parts.explained),
    addedFlexionDeg: degrees(parts.added),
    leanChangeDeg: degrees(leanOf(b) - leanOf(a)),
    turnTopDeg: degrees(wrapPi(turnOf(a) - addressTurn)),
    turnTowardTargetDeg: degrees(wrapPi(turnOf(b) - turnOf(a))),
    lateralChangeDeg: degrees(lateralOf(b) - lateralOf(a)),
    externalRotationTopDeg: degrees(arm.externalRotation),
    elevationTopDeg: degrees(arm.elevation),
    keptRotationDeg: degrees(axialRotation(at, times.fromS, times.toS)),
    chestLeadMs: times.armOnsetS === null ? null : (times.armOnsetS - times.fromS) * 1000,
    releaseToCatchMs: fallS === null ? null : fallS * 1000,
    fallCm: fallS === null ? null : 50 * STANDARD_GRAVITY * fallS * fallS,
  };
}
