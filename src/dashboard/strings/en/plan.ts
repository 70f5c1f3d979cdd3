import type { OwnRange } from '../../../coaching/plan.ts';
import { count } from './count.ts';

/** Writing a plan. */
export const plan = {
  name: 'Plan name',
  stage: 'Stage',
  ratio: 'Mix',
  rehearsals: 'Rehearsals',
  balls: 'For every … balls',
  noBalls: 'This stage has no balls.',
  targets: 'Targets',
  targetsWhy: 'Leave both fields empty for no target.',
  columns: {
    measure: 'Measure',
    min: 'At least',
    max: 'At most',
    last: 'Recent: median (middle half)',
  },
  end: { min: (measure: string) => `${measure}: at least`, max: (m: string) => `${m}: at most` },
  last: (median: string, low: string, high: string, n: number): string =>
    `${median} (half were between ${low} and ${high}; ${count(n, 'repetition')})`,
  noLast: 'not measured yet',
  volume: 'Volume',
  perSession: 'Maximum repetitions per session',
  perWeek: 'Maximum repetitions per week',
  volumeWhy: 'Most golf injuries come from overuse. The numbers are conventions.',
  ownRange: 'Comfortable range (optional)',
  ownRangeWhy:
    'Measured by the student in the range check. A warning appears near it. Never a number to train toward.',
  ranges: {
    externalRotationDeg: 'Arm rotated outward',
    flexionDeg: 'Forward bend',
    lateralTrailDeg: 'Bend to the trail side',
    lateralLeadDeg: 'Bend to the lead side',
  } satisfies Record<keyof OwnRange, string>,
  checklist: 'Checklist, one item per line',
  note: 'Note to the student',
  deg: '°',
};
