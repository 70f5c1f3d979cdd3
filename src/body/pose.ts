import { wrapPi } from '../math/angle.ts';
import { type Quat, aboutY, multiply, rotate, rotateInverse } from '../math/quat.ts';
import { UNIT_Z } from '../math/vec3.ts';
import type { Mountings } from './calibration.ts';
import type { SensorPair } from './pairing.ts';
import type { BodyFrame } from './segments.ts';

/**
 * Headings that the 6-axis filters leave open, rad about the vertical, and what was found at the
 * student's address. Plain data.
 */
export interface Headings {
  /** Turns the chest sensor's earth frame into the global one. */
  chest: number;
  /** Turns the arm sensor's earth frame into the global one. */
  trailArm: number;
}

/** Segment orientations of one instant in the global frame. */
export function bodyFrame(pair: SensorPair, mountings: Mountings, headings: Headings): BodyFrame {
  const chestMount = mountings.chest;
  const armMount = mountings.trailArm;
  return {
    timeS: pair.timeS,
    thorax: multiply(aboutY(headings.chest), multiply(pair.chest.q, chestMount)),
    humerus: multiply(aboutY(headings.trailArm), multiply(pair.arm.q, armMount)),
    thoraxRate: rotateInverse(chestMount, pair.chest.gyro),
    humerusRate: rotateInverse(armMount, pair.arm.gyro),
    gap: pair.gap,
    saturated: pair.saturated,
  };
}

/** Heading of a segment's Z axis about the vertical, rad; 0 along global Z, + as a turn to the left. */
export function headingOf(q: Quat): number {
  const z = rotate(q, UNIT_Z);
  return Math.atan2(z.x, z.z);
}

/** Mean of angles on the circle, rad; `null` for none. */
export function meanAngle(angles: readonly number[]): number | null {
  if (angles.length === 0) return null;
  const s = angles.reduce((sum, a) => sum + Math.sin(a), 0);
  const c = angles.reduce((sum, a) => sum + Math.cos(a), 0);
  return wrapPi(Math.atan2(s, c));
}
