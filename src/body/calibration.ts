import { degrees } from '../math/angle.ts';
import { type Quat, conjugate, fromAxes } from '../math/quat.ts';
import {
  type Vec3,
  angleBetween,
  cross,
  dot,
  normalise,
  scale,
  subtract,
  add,
} from '../math/vec3.ts';
import type { Orientation } from '../orientation/orientation.ts';
import { LIMITS } from './calibrationLimits.ts';
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
import { type CalibrationSteps, type WornSensor, standsAround } from './calibrationSteps.ts';
import { functionalAxis } from './functionalAxis.ts';
import { type Stand, gyroAgreement, standOf } from './stillness.ts';

/** Segment to sensor: `rotate(mounting, v_segment) = v_sensor`. */
export interface Mountings {
  readonly chest: Quat;
  readonly trailArm: Quat;
}

export interface Calibration {
  readonly quality: CalibrationQuality;
  /** `null` where the calibration was refused. */
  readonly mountings: Mountings | null;
}

interface SensorFit {
  readonly mounting: Quat | null;
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
  const fit = (sensor: WornSensor) =>
    fitSensor(
      sensor,
      before[sensor],
      after === null ? [] : after[sensor],
      (sensor === 'chest' ? steps.bows : steps.armRaises).map((w) => w[sensor]),
    );
  const chest = fit('chest');
  const trailArm = fit('trailArm');
  const lateStand = after === null ? [{ ...missingStep('calibration-stand'), refuses: false }] : [];
  const problems = [
    ...(swapped ? [swapped] : []),
    ...chest.problems,
    ...trailArm.problems,
    ...lateStand,
  ];
  const accepted = problems.every((p) => !p.refuses);
  const mountings =
    accepted && chest.mounting && trailArm.mounting
      ? { chest: chest.mounting, trailArm: trailArm.mounting }
      : null;
  return {
    quality: { accepted, problems, chest: chest.quality, trailArm: trailArm.quality },
    mountings,
  };
}

export const refusal = (problems: readonly CalibrationProblem[]): Calibration => ({
  quality: { accepted: false, problems, chest: UNKNOWN, trailArm: UNKNOWN },
  mountings: null,
});

function fitSensor(
  sensor: WornSensor,
  before: readonly Orientation[],
  after: readonly Orientation[],
  moves: readonly (readonly Orientation[])[],
): SensorFit {
  const stand = standOf(before);
  const late = standOf(after);
  const movement = functionalAxis(latestComplete(moves));
  const problems = [
    ...standProblems(sensor, stand, late),
    ...tiltProblem(sensor, stand, late),
    ...movementProblems(sensor, movement, gyroAgreement(moves.flat())),
  ];
  if (stand === null || problems.some((p) => p.refuses))
    return { mounting: null, quality: UNKNOWN, problems };
  const squareness = Math.abs(90 - degrees(angleBetween(movement.axis, stand.up)));
  return {
    mounting: mountingFrom(meanUp(stand, late), towardRight(sensor, movement.axis)),
    quality: {
      explained: movement.explained,
      spreadDeg: movement.spreadDeg,
      squarenessDeg: squareness,
    },
    problems: [...problems, ...axisProblems(sensor, movement, squareness)],
  };
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
const towardRight = (sensor: WornSensor, axis: Vec3): Vec3 =>
  sensor === 'chest' ? scale(axis, -1) : axis;

const meanUp = (stand: Stand, late: Stand | null): Vec3 =>
  late === null ? stand.up : (normalise(add(stand.up, late.up)) ?? stand.up);

/** z = normalise(z0 - (z0.y) y), x = y cross z: segment axes in the sensor frame. */
function mountingFrom(up: Vec3, right: Vec3): Quat | null {
  const z = normalise(subtract(right, scale(up, dot(right, up))));
  return z === null ? null : fromAxes(cross(up, z), up, z);
}

/** Sensor to segment, for readers that want it that way round. */
export const sensorToSegment = (mounting: Quat): Quat => conjugate(mounting);

export { LIMITS };
