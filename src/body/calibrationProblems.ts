import { degrees } from '../math/angle.ts';
import { STANDARD_GRAVITY } from '../math/gravity.ts';
import { angleBetween } from '../math/vec3.ts';
import type { Orientation } from '../orientation/orientation.ts';
import { LIMITS } from './calibrationLimits.ts';
import type { CalibrationProblem, CalibrationProblemCode } from './calibrationResult.ts';
import type { CalibrationSteps, WornSensor } from './calibrationSteps.ts';
import type { FunctionalAxis } from './functionalAxis.ts';
import type { Stand } from './stillness.ts';

const SENSOR_WORD: Record<WornSensor, string> = {
  chest: 'chest sensor',
  trailArm: 'trail arm sensor',
};
const MOVEMENT_WORD: Record<WornSensor, string> = { chest: 'bows', trailArm: 'arm raises' };
const STEP_WORD = {
  'calibration-stand': 'standing still',
  'calibration-bow': 'the three bows',
  'calibration-armRaise': 'the three arm raises',
  'address-reference': 'the address',
} as const;

const problem = (
  code: CalibrationProblemCode,
  refuses: boolean,
  message: string,
): CalibrationProblem => ({ code, refuses, message });

export const missingStep = (step: keyof typeof STEP_WORD): CalibrationProblem =>
  problem(
    'missing-step',
    true,
    `The calibration step "${STEP_WORD[step]}" (${step}) is missing: do the calibration again from the start.`,
  );

export function standProblems(
  sensor: WornSensor,
  stand: Stand | null,
  late: Stand | null,
): CalibrationProblem[] {
  const name = SENSOR_WORD[sensor];
  if (stand === null)
    return [
      problem(
        'gap',
        true,
        `The ${name} sent nothing while you stood still: check its link, then stand again.`,
      ),
    ];
  return [stand, ...(late === null ? [] : [late])].flatMap((s) => [
    ...(s.rateDegPerS > LIMITS.stillDegPerS
      ? [
          problem(
            'moving-while-still',
            true,
            `The ${name} moved while you were to stand still: stand quietly with the arms hanging and repeat.`,
          ),
        ]
      : []),
    ...(Math.abs(s.norm / STANDARD_GRAVITY - 1) > LIMITS.gravityFraction
      ? [
          problem(
            'gravity-norm',
            true,
            `The ${name} reads ${s.norm.toFixed(2)} m/s^2 at rest instead of 9.81: check its units and range setting.`,
          ),
        ]
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
  const name = SENSOR_WORD[sensor];
  if (tilt > 90)
    return [
      problem(
        'upside-down',
        true,
        `The ${name} turned upside down during the calibration: strap it on as drawn and start again.`,
      ),
    ];
  if (tilt <= LIMITS.standTiltDeg.accept) return [];
  return [
    problem(
      'stand-mismatch',
      tilt > LIMITS.standTiltDeg.refuse,
      `The ${name} tilted by ${tilt.toFixed(0)} degrees between the two stands: tighten the strap, stand the same way twice.`,
    ),
  ];
}

export function movementProblems(
  sensor: WornSensor,
  movement: FunctionalAxis,
  agreement: number,
): CalibrationProblem[] {
  const name = SENSOR_WORD[sensor];
  const moves = MOVEMENT_WORD[sensor];
  if (movement.excursionDeg < LIMITS.movementDeg || movement.repetitions === 0)
    return [
      problem(
        'too-few-repetitions',
        true,
        `The ${name} hardly turned during the ${moves}: repeat them, slowly and clearly larger.`,
      ),
    ];
  if (agreement < LIMITS.gyroAgreement)
    return [
      problem(
        'gyro-sign',
        true,
        `Gyroscope and accelerometer of the ${name} contradict each other: an axis or a sign is wrong in its settings.`,
      ),
    ];
  return [];
}

export function axisProblems(
  sensor: WornSensor,
  movement: FunctionalAxis,
  squarenessDeg: number,
): CalibrationProblem[] {
  const moves = MOVEMENT_WORD[sensor];
  const { explained, spreadDeg, repetitions } = movement;
  const found: CalibrationProblem[] = [];
  if (repetitions < 2)
    found.push(
      problem('too-few-repetitions', true, `Only one of the ${moves} was seen: do three of them.`),
    );
  if (explained < LIMITS.explained.accept)
    found.push(
      problem(
        'axis-unclear',
        explained < LIMITS.explained.refuse,
        `The ${moves} went in more than one direction (${(explained * 100).toFixed(0)} % about one axis): repeat them straight forward, without turning.`,
      ),
    );
  if (spreadDeg > LIMITS.spreadDeg.accept)
    found.push(
      problem(
        'axis-spread',
        spreadDeg > LIMITS.spreadDeg.refuse,
        `The ${moves} differed from each other by ${spreadDeg.toFixed(0)} degrees: repeat them all in the same direction.`,
      ),
    );
  if (squarenessDeg > LIMITS.squarenessDeg.accept)
    found.push(
      problem(
        'axis-not-square',
        squarenessDeg > LIMITS.squarenessDeg.refuse,
        `The ${moves} were ${squarenessDeg.toFixed(0)} degrees off the horizontal: stand upright first, then move straight forward.`,
      ),
    );
  return found;
}

/** The sensor that turns while the trunk is still and the arm goes up is on the arm. */
export function swapProblem(steps: CalibrationSteps): CalibrationProblem | null {
  const chest = rate(steps.armRaises.flatMap((w) => w.chest));
  const arm = rate(steps.armRaises.flatMap((w) => w.trailArm));
  if (!(chest > 2 * arm && chest > 0.1)) return null;
  return problem(
    'swapped-sensors',
    true,
    'The two sensors seem to be swapped: the chest sensor went up with the arm. Exchange them and start again.',
  );
}

const rate = (samples: readonly Orientation[]): number => {
  const sum = samples.reduce((s, o) => s + o.gyro.x ** 2 + o.gyro.y ** 2 + o.gyro.z ** 2, 0);
  return Math.sqrt(sum / Math.max(1, samples.length));
};
