import { radians } from '../../math/angle.ts';
import { vec3 } from '../../math/vec3.ts';
import { STANDARD_GRAVITY } from '../../math/gravity.ts';
import type { Reading } from './packet.ts';

/** What 32768 counts of a signed 16-bit value stand for. */
export interface FullScale {
  readonly accG: number;
  readonly gyroDegPerS: number;
}

const COUNTS = 32768;
/** Sensors stop at either end of the range, some of them a count short of it. */
const RAIL = COUNTS - 2;

const atRail = (count: number): boolean => count >= RAIL || count <= -RAIL;

/** Six little-endian int16 at `at`: accelerometer x y z, gyroscope x y z. */
export function readingAt(view: DataView, at: number, full: FullScale): Reading {
  const counts = Array.from({ length: 6 }, (_, i) => view.getInt16(at + 2 * i, true));
  const [ax = 0, ay = 0, az = 0, gx = 0, gy = 0, gz = 0] = counts;
  const acc = (full.accG * STANDARD_GRAVITY) / COUNTS;
  const gyro = radians(full.gyroDegPerS) / COUNTS;
  return {
    acc: vec3(ax * acc, ay * acc, az * acc),
    gyro: vec3(gx * gyro, gy * gyro, gz * gyro),
    saturated: counts.some(atRail),
  };
}

export const viewOf = (bytes: Uint8Array): DataView =>
  new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
