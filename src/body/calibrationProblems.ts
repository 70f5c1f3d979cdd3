import { degrees } from '../math/angle.ts';
import { STANDARD_GRAVITY } from '../math/gravity.ts';
import { angleBetween } from '../math/vec3.ts';
import type { Orientation } from '../orientation/orientation.ts';
import { LIMITS } from './calibrationLimits.ts';
import type { CalibrationProblem } from './calibrationResult.ts';
import type { CalibrationSteps, WornSensor } from './calibrationSteps.ts';
import { type CalibrationWord, problem } from './calibrationTexts.ts';
import type { FunctionalAxis } from './functionalAxis.ts';
import type { Stand } from './stillness.ts';

export const SENSOR_WORD = {
  chest: 'chest sensor',
  trailArm: 'trail arm sensor',
} as const satisfies Record<WornSensor, CalibrationWord>;
const MOVEMENT_WORD = { chest: 'bows', trailArm: 'arm raises' } as const;
const STEP_WORD = {
  'calibration-stand': 'standing still',
  'calibration-bow': 'the three bows',
  'calibration-armRaise': 'the three arm raises',
  'address-reference': 'the address',
} as const;

const whole = (value: number): string => value.toFixed(0);

export const missingStep = (step: keyof typeof STEP_WORD): CalibrationProblem =>
  problem('missing-step', true, { step: STEP_WORD[step], code: step });

export function standProblems(
  sensor: WornSensor,
  stand: Stand | null,
  late: Stand | null,
): CalibrationProblem[] {
  const name = { sensor: SENSOR_WORD[sensor] };
  if (stand === null) return [problem('gap', true, name)];
  return [stand, ...(late === null ? [] : [late])].flatMap(({ rateDegPerS, norm }) => [
    ...(rateDegPerS > LIMITS.stillDegPerS ? [problem('moving-while-still', true, name)] : []),
    ...(Math.abs(norm / STANDARD_GRAVITY - 1) > LIMITS.gravityFraction
      ? [problem('gravity-norm', true, { ...name, norm: norm.toFixed(2) })]
      : []),
  ]);
}

export function tiltProblem(
  sensor: WornSensor,
  stand: Stand | null,
  late: Stand | null,
): CalibrationProblem[] {
  if (stand === null || late === null) return [];
  const tilt = degrees(angleBetween(stand.up, late.up));
  const name = { sensor: SENSOR_WORD[sensor] };
  if (tilt > 90) return [problem('upside-down', true, name)];
  if (tilt <= LIMITS.standTiltDeg.accept) return [];
  const refuses = tilt > LIMITS.standTiltDeg.refuse;
  return [problem('stand-mismatch', refuses, { ...name, deg: whole(tilt) })];
}

export function movementProblems(
  sensor: WornSensor,
  movement: FunctionalAxis,
  agreement: number,
): CalibrationProblem[] {
  const name = { sensor: SENSOR_WORD[sensor] };
  if (movement.excursionDeg < LIMITS.movementDeg || movement.repetitions === 0)
    return [problem('too-few-repetitions:small', true, { ...name, moves: MOVEMENT_WORD[sensor] })];
  return agreement < LIMITS.gyroAgreement ? [problem('gyro-sign', true, name)] : [];
}

export function axisProblems(
  sensor: WornSensor,
  { explained, spreadDeg, repetitions }: FunctionalAxis,
  squarenessDeg: number,
): CalibrationProblem[] {
  const moves = MOVEMENT_WORD[sensor];
  const found: CalibrationProblem[] = [];
  if (repetitions < 2) found.push(problem('too-few-repetitions', true, { moves }));
  if (explained < LIMITS.explained.accept)
    found.push(
      problem('axis-unclear', explained < LIMITS.explained.refuse, {
        moves,
        percent: whole(explained * 100),
      }),
    );
  if (spreadDeg > LIMITS.spreadDeg.accept)
    found.push(
      problem('axis-spread', spreadDeg > LIMITS.spreadDeg.refuse, { moves, deg: whole(spreadDeg) }),
    );
  if (squarenessDeg > LIMITS.squarenessDeg.accept)
    found.push(
      problem('axis-not-square', squarenessDeg > LIMITS.squarenessDeg.refuse, {
        moves,
        deg: whole(squarenessDeg),
      }),
    );
  return found;
}

/** The sensor that turns while the trunk is still and the arm goes up is on the arm. */
export function swapProblem(steps: CalibrationSteps): CalibrationProblem | null {
  const chest = rate(steps.armRaises.flatMap((w) => w.chest));
  const arm = rate(steps.armRaises.flatMap((w) => w.trailArm));
  return chest > 2 * arm && chest > 0.1 ? problem('swapped-sensors', true) : null;
}

const rate = (samples: readonly Orientation[]): number => {
  const sum = samples.reduce((s, o) => s + o.gyro.x ** 2 + o.gyro.y ** 2 + o.gyro.z ** 2, 0);
  return Math.sqrt(sum / Math.max(1, samples.length));
};
