import type { SentenceBook } from '../sensors/sentence.ts';

/** Why a practice does not do what was asked of it. */
export const REFUSALS = {
  'safety-done': 'The safety check is done already.',
  'sensors-first': 'Both sensors must be well first; the list says what is missing.',
  'nothing-to-go-on': 'There is nothing to go on from here.',
  'recheck-later': 'A re-check comes after the sensor check.',
  'not-left-out': 'This step cannot be left out.',
  'nothing-to-repeat': 'There is nothing to repeat here.',
  'no-practice': 'No practice is under way.',
  'is-over': 'The practice is over: what was kept stays as it is.',
  'no-repetition': 'There is no repetition {index} in this session.',
  'nothing-to-undo': 'There is no correction to take back.',
  'warning-gone': 'That warning does not stand any more.',
  'nothing-to-close': 'There is no session to close.',
  'only-a-recording': 'This service plays a recording; it cannot begin a practice.',
  'hand-later':
    'The hand stays as it is while a practice is under way: end it first, or begin another one.',
  'name-too-long': 'A name has at most 40 characters.',
  'name-control': 'A name holds no control characters.',
  'nobody-kept': 'This service keeps nothing of a person.',
  'nothing-kept': 'No earlier calibration is kept for this hand: do the whole calibration.',
  'other-kind':
    'The earlier calibration was done with sensors of another kind: do the whole calibration.',
  'other-sensor':
    'The {sensor} sensor is not the one of the earlier calibration: do the whole calibration.',
} as const satisfies SentenceBook;

export type RefusalKey = keyof typeof REFUSALS;
