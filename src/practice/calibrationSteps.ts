import type { SessionEventType } from '../sensors/sessionEvent.ts';
import type { CalibrationView } from './view.ts';

/** The steps of a calibration in their order. */
export const CALIBRATION_ORDER: readonly SessionEventType[] = [
  'calibration-stand',
  'calibration-bow',
  'calibration-armRaise',
  'calibration-stand',
  'address-reference',
];

/** How many steps of the calibration under way are done; after the last one, a new first step begins anew. */
export function stepsDone({ steps }: Pick<CalibrationView, 'steps'>): number {
  let done = 0;
  for (const { type } of steps) {
    const expected = CALIBRATION_ORDER[done];
    if (type === expected) done += 1;
    else if (type === CALIBRATION_ORDER[0]) done = 1;
  }
  return done;
}
