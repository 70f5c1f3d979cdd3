import type { PlanView } from '../../../streaming/planContract.ts';

const day = (ms: number): string =>
  new Date(ms).toLocaleDateString('en-GB', { dateStyle: 'medium' });

/** The plan as the student reads and changes it. */
export const planPage = {
  title: 'Plan',
  loading: 'Fetching the plan …',
  author: {
    default: 'This is the standard plan. You can change it below.',
    student: 'You wrote this plan. You can change it below.',
    coach: 'Your coach set this plan. To change it, write to your coach.',
  } satisfies Record<PlanView['author'], string>,
  next: 'It holds from your next practice on. Sessions that are kept stay judged by the plan they were done under.',
  note: 'Note',
  stage: 'Stage',
  mix: 'Mix',
  mixText: (rehearsals: number, balls: number) =>
    balls === 0
      ? 'Rehearsals only'
      : `${rehearsals} rehearsals, then ${balls === 1 ? 'one ball' : `${balls} balls`}`,
  volume: 'Volume',
  volumeText: (session: number, week: number) =>
    `At most ${session} repetitions in a session, ${week} in a week`,
  targets: 'Targets',
  target: 'Target',
  basis: (basis: string) => `Each target is a ${basis}.`,
  notAsked: 'not asked for',
  drawing: (measure: string) => `Drawing: ${measure}`,
  howSure: 'How sure',
  checklist: 'Before you start',
  checklistWhy: 'Common practice, no source.',
  change: 'Change the plan',
  what: 'What you change',
  nothing: 'Nothing yet.',
  invalid: 'Some fields cannot be read; the sentence beside each says why.',
  save: 'Save the plan',
  saved: 'Saved.',
  standard: 'Fill in the standard plan',
  asItIs: 'Take my changes back',
  history: 'Former versions',
  version: (number: number, ms: number) => `Version ${number}, ${day(ms)}`,
  same: 'As the one before.',
  takeUp: (number: number) => `Fill in version ${number}`,
  week: (done: number, limit: number) => `This week: ${done} of at most ${limit} repetitions.`,
  weekFull: 'The week is full: rest, or ask your coach.',
  read: 'Read the plan',
};
