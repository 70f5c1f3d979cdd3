import type { PlanView } from '../../../streaming/planContract.ts';

const day = (ms: number): string =>
  new Date(ms).toLocaleDateString('en-GB', { dateStyle: 'medium' });

/** The plan as the student reads and changes it. */
export const planPage = {
  title: 'Plan',
  loading: 'Loading the plan …',
  author: {
    default: 'This is the standard plan. You can change it.',
    student: 'You wrote this plan. You can change it.',
    coach: 'Your coach set this plan. To change it, write to your coach.',
  } satisfies Record<PlanView['author'], string>,
  next: 'Changes apply from your next practice. Saved sessions are still judged by the plan of their day.',
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
  notAsked: 'no target',
  drawing: (measure: string) => `Drawing: ${measure}`,
  howSure: 'Accuracy',
  checklist: 'Before you start',
  checklistWhy: 'Common practice, not from a study.',
  edit: 'Edit',
  leave: 'Back without saving',
  change: 'Change plan',
  what: 'Your changes',
  nothing: 'No changes yet.',
  invalid: 'Please correct the marked fields.',
  save: 'Save plan',
  saved: 'Saved.',
  standard: 'Reset to the standard plan',
  asItIs: 'Discard my changes',
  history: 'Earlier versions',
  version: (number: number, ms: number) => `Version ${number}, ${day(ms)}`,
  same: 'No change.',
  takeUp: (number: number) => `Use version ${number}`,
  weekFull: 'You reached this week’s limit. Rest, or ask your coach.',
  read: 'Read the plan',
};
