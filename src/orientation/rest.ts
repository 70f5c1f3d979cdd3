import { radians } from '../math/angle.ts';
import {
  type LowPass3,
  type LowPassCoefficients,
  createLowPass3,
  stepLowPass,
} from '../math/lowPass.ts';
import type { Vec3 } from '../math/vec3.ts';

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
  /** Time below half of the limits, s: held still on purpose. */
  quietS: number;
}

export const createRest = (): RestState => ({
  gyro: createLowPass3(),
  acc: createLowPass3(),
  stillS: 0,
  quietS: 0,
});

const distance = (a: Vec3, b: Vec3): number => {
  const x = a.x - b.x;
  const y = a.y - b.y;
  const z = a.z - b.z;
  return Math.sqrt(x * x + y * y + z * z);
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
  const scatter = Math.max(
    distance(gyro, state.gyro.value) / p.gyroDeviation,
    distance(acc, state.acc.value) / p.accDeviation,
  );
  state.stillS = scatter < 1 ? state.stillS + c.periodS : 0;
  state.quietS = scatter < 0.5 ? state.quietS + c.periodS : 0;
}
