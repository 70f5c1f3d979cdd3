import type { Vec3 } from '../math/vec3.ts';
import type { Reading } from './orientation.ts';

// Beyond any sensor a body wears (16 g and 2000 deg/s on each axis are 272 m/s^2 and 60 rad/s).
const ACC_LIMIT = 1000; // m/s^2
const GYRO_LIMIT = 200; // rad/s

// NaN fails every comparison, so one test holds NaN, infinity and nonsense out.
const within = (v: Vec3, limit: number): boolean =>
  Math.abs(v.x) < limit && Math.abs(v.y) < limit && Math.abs(v.z) < limit;

/** Whether a sample can be a reading at all: finite, and of a size that occurs. */
export const isReading = (s: Reading): boolean =>
  within(s.acc, ACC_LIMIT) && within(s.gyro, GYRO_LIMIT);
