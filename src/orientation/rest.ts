import { radians } from '../math/angle.ts';
import { STANDARD_GRAVITY } from '../math/gravity.ts';
import {
  type LowPass3,
  type LowPassCoefficients,
  createLowPass3,
  startLowPass,
  stepLowPass,
} from '../math/lowPass.ts';
import { type Vec3, norm } from '../math/vec3.ts';

/** Defaults of Laidig & Seel 2023, table of parameters. */
export interface RestParameters {
  /** Time constant of the level that readings are held against, s. */
  readonly filterTauS: number;
  /** Largest deviation from that level at rest, rad/s. */
  readonly gyroDeviation: number;
  /** The same for the specific force, m/s^2. */
  readonly accDeviation: number;
  /** Time below both before it is called rest, s. */
  readonly minS: number;
}

export const REST_PARAMETERS: RestParameters = {
  filterTauS: 0.5,
  gyroDeviation: radians(2),
  accDeviation: 0.5,
  minS: 1.5,
};

/** Whether a sensor lies still, from the scatter of its own readings. */
export interface RestState {
  readonly gyro: LowPass3;
  readonly acc: LowPass3;
  /** Time below the limits, s. */
  stillS: number;
  /** Time of trembling at most, s: held still on purpose. */
  quietS: number;
  /** Mean square of the scatter over about `filterTauS`, in squared limits. */
  scatter: number;
}

/**
 * A reading this many limits off starts the level anew, so that the end of a fast movement is seen
 * at once and not after the level has crept down (our addition: 3 s sooner after 700 deg/s).
 */
const FAR = 10;

/**
 * A hand held still trembles: single readings pass a limit that their mean keeps well under (our
 * addition; squared limits, so 1.2 deg/s and 0.3 m/s^2 in the mean, never over twice the limits).
 */
const TREMBLING = { mean: 0.36, most: 4 };

export const createRest = (): RestState => ({
  gyro: createLowPass3(),
  acc: createLowPass3(),
  stillS: 0,
  quietS: 0,
  scatter: 1,
});

/** A body at rest feels one g; sensors are off by a few per cent (the width is our choice). */
const FORCE_TOLERANCE = 0.15;

/** Squared distance in units of a limit. */
const squaredOver = (a: Vec3, b: Vec3, limit: number): number => {
  const x = a.x - b.x;
  const y = a.y - b.y;
  const z = a.z - b.z;
  return (x * x + y * y + z * z) / (limit * limit);
};

/** One sample (rad/s, m/s^2, sensor frame) `c.periodS` after the one before. */
export function stepRest(
  state: RestState,
  p: RestParameters,
  c: LowPassCoefficients,
  gyro: Vec3,
  acc: Vec3,
): void {
  stepLowPass(state.gyro, c, gyro.x, gyro.y, gyro.z);
  stepLowPass(state.acc, c, acc.x, acc.y, acc.z);
  const squared = Math.max(
    squaredOver(gyro, state.gyro.value, p.gyroDeviation),
    squaredOver(acc, state.acc.value, p.accDeviation),
  );
  if (squared > FAR * FAR) {
    startLowPass(state.gyro, gyro.x, gyro.y, gyro.z);
    startLowPass(state.acc, acc.x, acc.y, acc.z);
  }
  state.scatter +=
    (c.periodS / (p.filterTauS + c.periodS)) * (Math.min(squared, TREMBLING.most) - state.scatter);
  const weighs = Math.abs(norm(state.acc.value) / STANDARD_GRAVITY - 1) < FORCE_TOLERANCE;
  const trembles = state.scatter < TREMBLING.mean && squared < TREMBLING.most;
  state.stillS = weighs && (squared < 1 || trembles) ? state.stillS + c.periodS : 0;
  state.quietS = weighs && trembles ? state.quietS + c.periodS : 0;
}
