import { degrees, wrapPi } from '../math/angle.ts';
import { relative, rotateInverse } from '../math/quat.ts';
import { norm } from '../math/vec3.ts';
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
    elevationDeg: degrees(humerus.elevation),
    gap: frame.gap,
  };
}

/** Angular speed of the humerus relative to the thorax, deg/s. */
export function relativeSpeed(frame: BodyFrame): number {
  const inThorax = relative(frame.thorax, frame.humerus);
  const carried = rotateInverse(inThorax, frame.thoraxRate);
  return degrees(
    Math.hypot(
      frame.humerusRate.x - carried.x,
      frame.humerusRate.y - carried.y,
      frame.humerusRate.z - carried.z,
    ),
  );
}

/**
 * True axial rotation rate of the humerus against the thorax, outward +, deg/s:
 * minus the relative angular rate along the humerus' own axis (Aliaj et al. 2021).
 */
export function axialRate(frame: BodyFrame): number {
  const carried = rotateInverse(relative(frame.thorax, frame.humerus), frame.thoraxRate);
  return -degrees(frame.humerusRate.y - carried.y);
}
