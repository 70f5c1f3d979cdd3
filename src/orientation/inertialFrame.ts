import { type MutableQuat, identity } from '../math/integrate.ts';
import { type LowPass3, createLowPass3, restartLowPass, setVec } from '../math/lowPass.ts';
import { rotate } from '../math/quat.ts';
import { type Vec3, dot, norm } from '../math/vec3.ts';
import { radians } from '../math/angle.ts';

/**
 * The almost inertial frame: where integrating the gyro alone leads. It turns only with what is
 * left of the bias, so over seconds the specific force seen from it averages to gravity however
 * the sensor is turned (the idea of Laidig & Seel 2023).
 */
export interface InertialState {
  /** Sensor to almost inertial frame. */
  readonly q: MutableQuat;
  /** Low-passed specific force, m/s^2, almost inertial frame. */
  readonly acc: LowPass3;
}

export const createInertial = (): InertialState => ({
  q: identity(),
  acc: createLowPass3(),
});

/** After `gapS` without samples the past counts less; after a second, or a gap of unknown turning (infinite), nothing of it. */
export const forgetForce = (state: InertialState, tauS: number, gapS: number): void =>
  restartLowPass(state.acc, Math.min(state.acc.averagedS, tauS) * Math.max(0, 1 - gapS));

const AGREEMENT = Math.cos(radians(3));

/**
 * A sensor that lies still feels gravity alone: where the slow average disagrees (after a gap, a
 * clipped swing or bad input) it starts again from `still`, m/s^2, sensor frame, the mean of `stillS`.
 */
export function trustStillness(state: InertialState, still: Vec3, stillS: number): void {
  const now = rotate(state.q, still);
  const average = state.acc.value;
  if (dot(now, average) > AGREEMENT * norm(now) * norm(average)) return;
  restartLowPass(state.acc, stillS);
  setVec(state.acc.value, now.x, now.y, now.z);
}
