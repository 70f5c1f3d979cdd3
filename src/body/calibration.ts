import { degrees } from '../math/angle.ts';
import { type Quat, fromAxes } from '../math/quat.ts';
import {
  type Vec3,
  ZERO,
  angleBetween,
  cross,
  dot,
  normalise,
  scale,
  subtract,
  add,
} from '../math/vec3.ts';
import type { Orientation } from '../orientation/orientation.ts';
import {
  axisProblems,
  movementProblems,
  standProblems,
  swapProblem,
  tiltProblem,
  missingStep,
} from './calibrationProblems.ts';
import type {
  CalibrationProblem,
  CalibrationQuality,
  SensorCalibrationQuality,
} from './calibrationResult.ts';
import {
  type CalibrationSteps,
  type StepWindow,
  type WornSensor,
  standsAround,
} from './calibrationSteps.ts';
import { functionalAxis } from './functionalAxis.ts';
import { gyroAgreement, standOf } from './stillness.ts';

/** Segment to sensor: `rotate(mounting, v_segment) = v_sensor`. */
export type Mountings = Readonly<Record<WornSensor, Quat>>;

/** What one sensor's mounting follows from, sensor frame. */
export interface SegmentFit {
  /** Mean specific force of each stand as measured, m/s^2, the accelerometer's offset still in it. */
  readonly stands: readonly Vec3[];
  /** Unit vector to the golfer's right. */
  readonly right: Vec3;
}

export interface Calibration {
  readonly quality: CalibrationQuality;
  /** `null` where the calibration was refused. */
  readonly fits: Readonly<Record<WornSensor, SegmentFit>> | null;
}

interface SensorFit {
  readonly fit: SegmentFit | null;
  readonly quality: SensorCalibrationQuality;
  readonly problems: readonly CalibrationProblem[];
}

const UNKNOWN: SensorCalibrationQuality = {
  explained: null,
  spreadDeg: null,
  squarenessDeg: null,
};

/** Sensor-to-segment alignment from the guided steps. Never throws: what is wrong is in `quality.problems`. */
export function calibrate(steps: CalibrationSteps): Calibration {
  const { before, after } = standsAround(steps);
  const missing = [
    ...(before === null ? [missingStep('calibration-stand')] : []),
    ...(steps.bows.length === 0 ? [missingStep('calibration-bow')] : []),
    ...(steps.armRaises.length === 0 ? [missingStep('calibration-armRaise')] : []),
  ];
  if (before === null || missing.length > 0) return refusal(missing);

  const swapped = swapProblem(steps);
  const chest = fitSensor('chest', before, after, steps.bows);
  const trailArm = fitSensor('trailArm', before, after, steps.armRaises);
  const lateStand = after === null ? [{ ...missingStep('calibration-stand'), refuses: false }] : [];
  const problems = [
    ...(swapped ? [swapped] : []),
    ...chest.problems,
    ...trailArm.problems,
    ...lateStand,
  ];
  const accepted = problems.every((p) => !p.refuses);
  const fits =
    accepted && chest.fit && trailArm.fit ? { chest: chest.fit, trailArm: trailArm.fit } : null;
  return {
    quality: { accepted, problems, chest: chest.quality, trailArm: trailArm.quality },
    fits,
  };
}

export const refusal = (problems: readonly CalibrationProblem[]): Calibration => ({
  quality: { accepted: false, problems, chest: UNKNOWN, trailArm: UNKNOWN },
  fits: null,
});

function fitSensor(
  sensor: WornSensor,
  before: StepWindow,
  after: StepWindow | null,
  moved: readonly StepWindow[],
): SensorFit {
  const moves = moved.map((w) => w[sensor]);
  const stand = standOf(before[sensor]);
  const late = after === null ? null : standOf(after[sensor]);
  const movement = functionalAxis(latestComplete(moves));
  const problems = [
    ...standProblems(sensor, stand, late),
    ...tiltProblem(sensor, stand, late),
    ...movementProblems(sensor, movement, gyroAgreement(moves.flat())),
  ];
  if (stand === null || problems.some((p) => p.refuses))
    return { fit: null, quality: UNKNOWN, problems };
  const squarenessDeg = Math.abs(90 - degrees(angleBetween(movement.axis, stand.up)));
  const { explained, spreadDeg } = movement;
  return {
    fit: {
      stands: [before, ...(after === null ? [] : [after])].flatMap((w) => measuredForce(w, sensor)),
      right: towardRight(sensor, movement.axis),
    },
    quality: { explained, spreadDeg, squarenessDeg },
    problems: [...problems, ...axisProblems(sensor, movement, squarenessDeg)],
  };
}

function measuredForce(w: StepWindow, sensor: WornSensor): Vec3[] {
  const stand = standOf(w[sensor]);
  return stand === null ? [] : [add(scale(stand.up, stand.norm), w.accBias[sensor])];
}

/** A redone block of several repetitions replaces the earlier ones; single ones are taken together. */
function latestComplete(
  moves: readonly (readonly Orientation[])[],
): readonly (readonly Orientation[])[] {
  const last = moves.at(-1);
  if (last !== undefined && functionalAxis([last]).repetitions >= 2) return [last];
  return moves;
}

/** A bow goes out about -Z, a raise about +Z; the axis is signed by where the movement goes. */
export const towardRight = (sensor: WornSensor, axis: Vec3): Vec3 =>
  sensor === 'chest' ? scale(axis, -1) : axis;

/**
 * The mounting that follows from a fit once the accelerometer's offset (m/s^2, sensor frame) is known:
 * y up, z = normalise(z0 - (z0.y) y), x = y cross z. `null` where the fit has no direction.
 */
export function mountingOf(fit: SegmentFit, accBias: Vec3): Quat | null {
  const ups = fit.stands.map((force) => normalise(subtract(force, accBias)) ?? ZERO);
  const up = normalise(ups.reduce(add, ZERO));
  if (up === null) return null;
  const z = normalise(subtract(fit.right, scale(up, dot(fit.right, up))));
  return z === null ? null : fromAxes(cross(up, z), up, z);
}
