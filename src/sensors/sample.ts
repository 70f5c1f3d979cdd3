import { type Vec3, vec3 } from '../math/vec3.ts';

/** Where a sensor is worn. `club` is optional and never needed. */
export type SensorRole = 'chest' | 'trailArm' | 'club';

/** One reading of one sensor, in the sensor's own frame, SI. */
export interface ImuSample {
  readonly sensor: SensorRole;
  /** Session clock, s from recording onset. */
  readonly timeS: number;
  /** Specific force, m/s^2: at rest +9.81 along the axis that points up. */
  readonly acc: Vec3;
  /** Angular rate, rad/s. */
  readonly gyro: Vec3;
  /** Raw device clock, s, unwrapped; `null` where the device has none. */
  readonly deviceTimeS: number | null;
  /** Host clock at arrival, s from recording onset; `null` where not known. */
  readonly arrivalTimeS: number | null;
  /** A raw count stood at the end of its range: the true value was larger. */
  readonly saturated: boolean;
}

/**
 * The same reading as a right-handed golfer's: mirrored in the x-y plane of the sensor frame.
 * A polar vector changes z, an axial one x and y. Done once, at the border; nothing downstream knows the hand.
 */
export const mirrorSample = (s: ImuSample): ImuSample => ({
  ...s,
  acc: vec3(s.acc.x, s.acc.y, -s.acc.z),
  gyro: vec3(-s.gyro.x, -s.gyro.y, s.gyro.z),
});
