import { degrees, wrapPi } from '../math/angle.ts';
import { relative, rotateInverse } from '../math/quat.ts';
import { type Vec3, norm, scale, subtract } from '../math/vec3.ts';
import { thoraxAngles, humerusAngles } from '../body/angles.ts';
import type { BodyFrame } from '../body/segments.ts';

/** What the detector watches, one row a frame. Degrees and deg/s. */
export interface SwingSignals {
  readonly timeS: number;
  /** |angular rate| of thorax and humerus in the room. */
  readonly chestSpeed: number;
  readonly armSpeed: number;
  /** Turn about the trunk's own axis, toward the target +. */
  readonly turnRate: number;
  /** From the address, toward the target +, -180..180. */
  readonly turnDeg: number;
  readonly leanDeg: number;
  readonly flexionDeg: number;
  /** Toward the trail side +. */
  readonly lateralDeg: number;
  readonly elevationDeg: number;
  readonly gap: boolean;
}

export function signalsOf(frame: BodyFrame): SwingSignals {
  const thorax = thoraxAngles(frame.thorax);
  const humerus = humerusAngles(relative(frame.thorax, frame.humerus));
  return {
    timeS: frame.timeS,
    chestSpeed: degrees(norm(frame.thoraxRate)),
    armSpeed: degrees(norm(frame.humerusRate)),
    turnRate: degrees(frame.thoraxRate.y),
    turnDeg: degrees(wrapPi(thorax.turn)),
    leanDeg: degrees(thorax.lean),
    flexionDeg: degrees(thorax.flexion),
    lateralDeg: degrees(thorax.lateral),
    elevationDeg: degrees(humerus.elevation),
    gap: frame.gap,
  };
}

/** Angular rate of the humerus relative to the thorax, humerus frame, deg/s. */
export function relativeRate(frame: BodyFrame): Vec3 {
  const carried = rotateInverse(relative(frame.thorax, frame.humerus), frame.thoraxRate);
  return scale(subtract(frame.humerusRate, carried), degrees(1));
}

/**
 * True axial rotation rate of the humerus against the thorax, outward +, deg/s:
 * minus the relative angular rate along the humerus' own axis (Aliaj et al. 2021).
 */
export const axialRate = (frame: BodyFrame): number => -relativeRate(frame).y;
