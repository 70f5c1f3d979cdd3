/** Why a calibration was refused or doubted; `message` says what to do. */
export interface CalibrationProblem {
  readonly code: CalibrationProblemCode;
  readonly message: string;
  /** True: angles may not be shown. False: a doubt, said beside the numbers. */
  readonly refuses: boolean;
}

export type CalibrationProblemCode =
  | 'missing-step'
  | 'moving-while-still'
  | 'too-few-repetitions'
  | 'axis-unclear'
  | 'axis-spread'
  | 'axis-not-square'
  | 'stand-mismatch'
  | 'swapped-sensors'
  | 'upside-down'
  | 'gyro-sign'
  | 'gravity-norm'
  | 'gap'
  | 'mounting-moved'
  | 'nothing-kept';

export interface SensorCalibrationQuality {
  /** l1/(l1+l2+l3) of the gyro during the movement, 0..1; `null` where it could not be taken. */
  readonly explained: number | null;
  /** Largest deviation of one repetition's axis from the common axis, deg. */
  readonly spreadDeg: number | null;
  /** |90 - angle between axis and vertical|, deg. */
  readonly squarenessDeg: number | null;
}

export interface CalibrationQuality {
  readonly accepted: boolean;
  readonly problems: readonly CalibrationProblem[];
  readonly chest: SensorCalibrationQuality;
  readonly trailArm: SensorCalibrationQuality;
}
