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

/** What every filter's state shows beside the attitude. */
export interface FilterState {
  /** Estimated gyro bias, rad/s, sensor frame. */
  readonly bias: { readonly value: Vec3 };
  /** The sensor is held still. */
  readonly rest: boolean;
}

/** What a filter needs of a sample. */
export type Reading = Pick<ImuSample, 'acc' | 'gyro'>;

/** A 6-axis filter. `state` is plain data: JSON and back gives the same run. */
export interface OrientationFilter<State extends FilterState> {
  readonly name: string;
  create(): State;
  /**
   * Takes one sample into `state` (in place) and returns its orientation. Its gyro reading is taken
   * as the mean rate since the sample before: exact for a steady rate; where readings are of an
   * instant, the caller gives the mean of two.
   * @param dtS time since the previous sample, s; values that are not finite and positive leave the attitude as it was.
   * Samples that are not finite are ignored for attitude and bias; the state never becomes NaN.
   */
  update(state: State, reading: Reading, dtS: number): Quat;
  /** Nothing came for `gapS` seconds: the attitude stays, and what comes next levels it soon. */
  afterGap(state: State, gapS: number): void;
}
