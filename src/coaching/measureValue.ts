import type { Repetition } from '../swings/repetition.ts';
import type { TargetMeasure } from './plan.ts';

/** A repetition's value for a target; `null` where it was not taken. */
export function measureValue(r: Repetition, measure: TargetMeasure): number | null {
  if (measure !== 'holdS') return r.measures[measure];
  return r.kind === 'rehearsal' && !r.flags.includes('not-seen') ? r.holdS : null;
}
