import { type SentenceBook, fill } from '../sensors/sentence.ts';
import type { CalibrationProblem, CalibrationProblemCode } from './calibrationResult.ts';

/** Every sentence of a calibration problem; its key is its code, or begins with it where there are several. */
export const CALIBRATION_TEXTS = {
  'missing-step':
    'The calibration step "{step}" ({code}) is missing. Repeat the calibration from the start.',
  gap: 'The {sensor} sent no data while you stood still. Check its connection, then stand still again.',
  'moving-while-still':
    'The {sensor} moved during the still part. Stand still with your arms hanging and repeat.',
  'gravity-norm':
    'The {sensor} reads {norm} m/s^2 at rest instead of 9.81. Check its unit and range settings.',
  'upside-down':
    'The {sensor} turned upside down during calibration. Put it on as shown and start again.',
  'stand-mismatch':
    'The {sensor} tilted by {deg} degrees between the two still parts. Tighten the strap and stand the same way both times.',
  'too-few-repetitions:small':
    'The {sensor} hardly moved during the {moves}. Repeat them slowly, with a clearly larger movement.',
  'too-few-repetitions': 'Only one of the {moves} was detected. Do three of them.',
  'gyro-sign':
    'The gyroscope and accelerometer of the {sensor} disagree. An axis or a sign is wrong in its settings.',
  'axis-unclear':
    'The {moves} went in more than one direction ({percent} % about one axis). Repeat them straight forward, without turning.',
  'axis-unclear:recheck':
    'The {move} went in more than one direction. Repeat the check straight forward, without turning.',
  'axis-spread': 'The {moves} differed by {deg} degrees. Repeat them all in the same direction.',
  'axis-not-square':
    'The {moves} were {deg} degrees off horizontal. Stand upright first, then move straight forward.',
  'swapped-sensors':
    'The two sensors seem to be swapped: the chest sensor moved with the arm. Swap them and start again.',
  'nothing-kept': 'No earlier calibration to compare with. Do the full calibration.',
  'mounting-moved':
    'The {sensor} has moved by about {deg} degrees (tilted {tilt}, twisted around the {part} {twist}). Do the full calibration.',
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
