import { degrees } from '../math/angle.ts';
import { rotate } from '../math/quat.ts';
import {
  type Vec3,
  UNIT_Y,
  UNIT_Z,
  add,
  angleBetween,
  dot,
  normalise,
  scale,
  subtract,
} from '../math/vec3.ts';
import {
  type Calibration,
  type SegmentFit,
  mountingOf,
  refusal,
  towardRight,
} from './calibration.ts';
import { LIMITS, RECHECK_LIMITS } from './calibrationLimits.ts';
import {
  SENSOR_WORD,
  missingStep,
  movementProblems,
  standProblems,
} from './calibrationProblems.ts';
import type { CalibrationProblem, SensorCalibrationQuality } from './calibrationResult.ts';
import type { StepWindow, WornSensor } from './calibrationSteps.ts';
import { problem } from './calibrationTexts.ts';
import { type FunctionalAxis, functionalAxis } from './functionalAxis.ts';
import { gyroAgreement, standOf } from './stillness.ts';

/** What is kept of a calibration, so that a later one may start from it. Plain data. */
export type KnownFits = Readonly<Record<WornSensor, SegmentFit>>;

/** One still stand, one bow and one raise of the trail arm. */
export interface RecheckSteps {
  readonly stand: StepWindow;
  readonly bow: StepWindow;
  readonly armRaise: StepWindow;
}

/** How far a sensor sits from where it sat, deg. */
export interface MountingShift {
  /** Its upright against the kept one: about the two horizontal axes of the segment. */
  readonly tiltDeg: number;
  /** About the segment's long axis, seen by the movement's axis. */
  readonly twistDeg: number;
}

interface Compared {
  readonly quality: SensorCalibrationQuality;
  readonly problems: readonly CalibrationProblem[];
}

/**
 * Compares the mounting with the kept one. Accepted, the kept fits stand; refused, there are none and the
 * problem says which sensor moved and about how far.
 * @param accBias the accelerometers' offsets as known now, m/s^2, sensor frame
 */
export function recheck(
  known: KnownFits | undefined,
  steps: RecheckSteps,
  accBias: Readonly<Record<WornSensor, Vec3>>,
): Calibration {
  if (known === undefined) return refusal([NOTHING_KEPT]);
  const chest = compare('chest', known.chest, steps.stand, steps.bow, accBias.chest);
  const trailArm = compare(
    'trailArm',
    known.trailArm,
    steps.stand,
    steps.armRaise,
    accBias.trailArm,
  );
  const problems = [...chest.problems, ...trailArm.problems];
  const accepted = problems.every((p) => !p.refuses);
  return {
    quality: { accepted, problems, chest: chest.quality, trailArm: trailArm.quality },
    fits: accepted ? known : null,
  };
}

const NOTHING_KEPT = problem('nothing-kept', true);

function compare(
  sensor: WornSensor,
  fit: SegmentFit,
  standing: StepWindow,
  moving: StepWindow,
  accBias: Vec3,
): Compared {
  const stand = standOf(standing[sensor]);
  const samples = moving[sensor];
  const movement = functionalAxis([samples]);
  const problems = [
    ...standProblems(sensor, stand, null),
    ...movementProblems(sensor, movement, gyroAgreement(samples)),
    ...clearProblem(sensor, movement),
  ];
  const quality = { explained: movement.explained, spreadDeg: null, squarenessDeg: null };
  if (stand === null || problems.length > 0) return { quality, problems };
  const force = subtract(add(scale(stand.up, stand.norm), standing.accBias[sensor]), accBias);
  const shift = shiftOf(fit, accBias, force, towardRight(sensor, movement.axis));
  return { quality, problems: movedProblem(sensor, shift) };
}

const clearProblem = (sensor: WornSensor, { explained }: FunctionalAxis): CalibrationProblem[] =>
  explained >= LIMITS.explained.refuse
    ? []
    : [
        problem('axis-unclear:recheck', true, {
          move: sensor === 'chest' ? 'bow' : 'arm raise',
        }),
      ];

/**
 * @param force mean specific force of the stand, freed of the offset; `right` the movement's axis; sensor frame
 * @returns `null` where the kept fit has no direction
 */
export function shiftOf(
  fit: SegmentFit,
  accBias: Vec3,
  force: Vec3,
  right: Vec3,
): MountingShift | null {
  const mounting = mountingOf(fit, accBias);
  const up = normalise(force);
  if (mounting === null || up === null) return null;
  const level = normalise(subtract(right, scale(up, dot(right, up))));
  const keptUp = rotate(mounting, UNIT_Y);
  const keptRight = rotate(mounting, UNIT_Z);
  const keptLevel = normalise(subtract(keptRight, scale(up, dot(keptRight, up))));
  if (level === null || keptLevel === null) return null;
  return {
    tiltDeg: degrees(angleBetween(up, keptUp)),
    twistDeg: degrees(angleBetween(level, keptLevel)),
  };
}

function movedProblem(sensor: WornSensor, shift: MountingShift | null): CalibrationProblem[] {
  if (shift === null) return [missingStep('calibration-stand')];
  const limits = RECHECK_LIMITS[sensor];
  const { tiltDeg, twistDeg } = shift;
  if (tiltDeg <= limits.tiltDeg && twistDeg <= limits.twistDeg) return [];
  return [
    problem('mounting-moved', true, {
      sensor: SENSOR_WORD[sensor],
      deg: Math.hypot(tiltDeg, twistDeg).toFixed(0),
      tilt: tiltDeg.toFixed(0),
      part: sensor === 'chest' ? 'chest' : 'arm',
      twist: twistDeg.toFixed(0),
    }),
  ];
}
