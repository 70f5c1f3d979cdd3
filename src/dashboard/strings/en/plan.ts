import type { OwnRange } from '../../../coaching/plan.ts';

/** Writing a plan. */
export const plan = {
  name: 'Name of the plan',
  stage: 'Stage',
  ratio: 'Mix',
  rehearsals: 'Rehearsals',
  balls: 'before so many balls',
  noBalls: 'In this stage no balls are asked for.',
  targets: 'Targets',
  targetsWhy: 'Leave both ends empty to ask for nothing.',
  columns: {
    measure: 'Measure',
    min: 'At least',
    max: 'At most',
    last: 'Last values: median, middle half',
  },
  end: { min: (measure: string) => `${measure}: at least`, max: (m: string) => `${m}: at most` },
  last: (median: string, low: string, high: string, n: number): string =>
    `${median} (${low} to ${high}), n ${n}`,
  noLast: 'not taken yet',
  volume: 'Volume',
  perSession: 'Most repetitions in a session',
  perWeek: 'Most repetitions in a week',
  volumeWhy: 'Most golf injuries come from overuse; the numbers are conventions.',
  ownRange: 'Own comfortable range (optional)',
  ownRangeWhy:
    'As measured by the student in the range check; a warning comes near it. Never a number to train to.',
  ranges: {
    externalRotationDeg: 'Arm turned out',
    flexionDeg: 'Forward bend',
    lateralTrailDeg: 'Bend to the trail side',
    lateralLeadDeg: 'Bend to the lead side',
  } satisfies Record<keyof OwnRange, string>,
  checklist: 'Checklist, one line each',
  note: 'Note to the student',
  deg: '°',
};
