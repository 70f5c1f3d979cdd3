import { type SentenceBook, fill } from '../sensors/sentence.ts';
import type { CalibrationProblem, CalibrationProblemCode } from './calibrationResult.ts';

/** Every sentence of a calibration problem; its key is its code, or begins with it where there are several. */
export const CALIBRATION_TEXTS = {
  'missing-step':
    'The calibration step "{step}" ({code}) is missing: do the calibration again from the start.',
  gap: 'The {sensor} sent nothing while you stood still: check its link, then stand again.',
  'moving-while-still':
    'The {sensor} moved while you were to stand still: stand quietly with the arms hanging and repeat.',
  'gravity-norm':
    'The {sensor} reads {norm} m/s^2 at rest instead of 9.81: check its units and range setting.',
  'upside-down':
    'The {sensor} turned upside down during the calibration: strap it on as drawn and start again.',
  'stand-mismatch':
    'The {sensor} tilted by {deg} degrees between the two stands: tighten the strap, stand the same way twice.',
  'too-few-repetitions:small':
    'The {sensor} hardly turned during the {moves}: repeat them, slowly and clearly larger.',
  'too-few-repetitions': 'Only one of the {moves} was seen: do three of them.',
  'gyro-sign':
    'Gyroscope and accelerometer of the {sensor} contradict each other: an axis or a sign is wrong in its settings.',
  'axis-unclear':
    'The {moves} went in more than one direction ({percent} % about one axis): repeat them straight forward, without turning.',
  'axis-unclear:recheck':
    'The {move} went in more than one direction: repeat the check straight forward, without turning.',
  'axis-spread':
    'The {moves} differed from each other by {deg} degrees: repeat them all in the same direction.',
  'axis-not-square':
    'The {moves} were {deg} degrees off the horizontal: stand upright first, then move straight forward.',
  'swapped-sensors':
    'The two sensors seem to be swapped: the chest sensor went up with the arm. Exchange them and start again.',
  'nothing-kept': 'No earlier calibration is kept to compare with: do the whole calibration.',
  'mounting-moved':
    'The {sensor} has moved by about {deg} degrees (tilted {tilt}, twisted around the {part} {twist}): do the whole calibration.',
} as const satisfies SentenceBook;

export type CalibrationTextKey = keyof typeof CALIBRATION_TEXTS;

/** The words that stand for values in these sentences. */
export const CALIBRATION_WORDS = [
  'chest sensor',
  'trail arm sensor',
  'bows',
  'arm raises',
  'bow',
  'arm raise',
  'chest',
  'arm',
  'standing still',
  'the three bows',
  'the three arm raises',
  'the address',
] as const;
export type CalibrationWord = (typeof CALIBRATION_WORDS)[number];

type WordNames = 'sensor' | 'moves' | 'move' | 'part' | 'step';

export interface CalibrationValues extends Partial<Readonly<Record<WordNames, CalibrationWord>>> {
  readonly code?: string;
  /** Rounded as it is to be read. */
  readonly norm?: string;
  readonly deg?: string;
  readonly tilt?: string;
  readonly twist?: string;
  readonly percent?: string;
}

export const problem = (
  key: CalibrationTextKey,
  refuses: boolean,
  values: CalibrationValues = {},
): CalibrationProblem => ({
  code: key.replace(/:.*$/, '') as CalibrationProblemCode,
  refuses,
  message: fill(CALIBRATION_TEXTS[key], { ...values }),
});
