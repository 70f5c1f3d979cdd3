import type { SentenceBook } from '../sensors/sentence.ts';

/** Why a practice does not do what was asked of it. */
export const REFUSALS = {
  'safety-done': 'The safety check is already done.',
  'sensors-first': 'Both sensors must be OK first. See the list for what is missing.',
  'nothing-to-go-on': 'You cannot continue from here.',
  'recheck-later': 'Do the sensor check first.',
  'not-left-out': 'You cannot skip this step.',
  'nothing-to-repeat': 'Nothing to repeat here.',
  'no-practice': 'No practice is running.',
  'is-over': 'The practice is over and saved. It can no longer be changed here.',
  'no-repetition': 'This session has no repetition {index}.',
  'nothing-to-undo': 'No correction to undo.',
  'warning-gone': 'That warning is already closed.',
  'nothing-to-close': 'No session to close.',
  'only-a-recording': 'Stillcatch is playing a recording. You cannot start a practice here.',
  'hand-later': 'You cannot change the hand during a practice. End the practice first.',
  'name-too-long': 'Name: at most 40 characters.',
  'name-control': 'Name: no control characters.',
  'pain-first': 'Choose a number for your pain first.',
  'no-stop': 'There is no stop to read.',
  'nobody-kept': 'Stillcatch is not saving personal settings here.',
  'nothing-kept': 'No earlier calibration for this hand. Do the full calibration.',
  'other-kind': 'The earlier calibration used another type of sensor. Do the full calibration.',
  'other-sensor':
    'The {sensor} sensor is not the one used in the earlier calibration. Do the full calibration.',
} as const satisfies SentenceBook;

export type RefusalKey = keyof typeof REFUSALS;
