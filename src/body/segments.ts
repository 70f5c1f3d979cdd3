import type { Quat } from '../math/quat.ts';
import type { Vec3 } from '../math/vec3.ts';

/**
 * Both segments at one instant, at the chest sensor's sample times. Right-handed golfer (left ones
 * are mirrored at the border). Global frame: X where the golfer faces at address, Y up, Z right.
 */
export interface BodyFrame {
  /** Session clock, s. */
  readonly timeS: number;
  /** Thorax to global. */
  readonly thorax: Quat;
  /** Humerus to global; interpolated to the chest's time. */
  readonly humerus: Quat;
  /** Angular rate of the thorax, rad/s, thorax frame. */
  readonly thoraxRate: Vec3;
  /** Angular rate of the humerus, rad/s, humerus frame. */
  readonly humerusRate: Vec3;
  /** One of the sensors had no data here that could be trusted. */
  readonly gap: boolean;
  readonly saturated: boolean;
}

/** Joint angles in degrees, definitions of biomechanics: see DEVELOPERS.md. */
export interface JointAngles {
  readonly flexionDeg: number;
  readonly lateralDeg: number;
  readonly leanDeg: number;
  /** Toward the target +, 0 at the address. */
  readonly turnDeg: number;
  readonly elevationDeg: number;
  /** Plane of elevation; `null` at the pole. */
  readonly planeDeg: number | null;
  /** ISB Y-X-Y third angle, outward +; `null` at the pole. */
  readonly externalRotationDeg: number | null;
  /** Elevation is 30-150 deg: plane and external rotation mean something. */
  readonly valid: boolean;
}
