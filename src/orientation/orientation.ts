import type { Quat } from '../math/quat.ts';
import type { Vec3 } from '../math/vec3.ts';
import type { ImuSample } from '../sensors/sample.ts';

/**
 * Orientation of one sensor at one sample. `q` turns the sensor frame into an earth frame with
 * Y up whose heading is arbitrary but steady (6-axis: no magnetometer).
 */
export interface Orientation {
  /** Session clock, s. */
  readonly timeS: number;
  readonly q: Quat;
  /** Angular rate less the estimated bias, rad/s, sensor frame. */
  readonly gyro: Vec3;
  /** Specific force, m/s^2, sensor frame, as measured. */
  readonly acc: Vec3;
  /** The sensor is held still. */
  readonly rest: boolean;
  /** The sample was interpolated over a short loss (up to 4 samples). */
  readonly interpolated: boolean;
  /** First sample after a loss too long to interpolate. */
  readonly afterGap: boolean;
  readonly saturated: boolean;
}

/** A 6-axis filter. `state` is plain data: JSON and back gives the same run. */
export interface OrientationFilter<State> {
  readonly name: string;
  create(): State;
  /**
   * Takes one sample into `state` (in place) and returns its orientation.
   * @param dtS time since the previous sample, s; values that are not finite and positive leave the attitude as it was.
   * Samples that are not finite are ignored for attitude and bias; the state never becomes NaN.
   */
  update(state: State, sample: ImuSample, dtS: number): Quat;
}
