import type { WarningId } from './judgement.ts';

/** Why a student needs a look, in one line each; `{name}` stands for a value. */
export const NEED_TEXTS = {
  rated: 'Rated pain {rating} of 10.',
  warnedAndRated: '{warning} Rated pain {rating} of 10.',
  more: '{text} Sessions with pain that are open: {n}.',
  question: 'Waits for your answer.',
  questions: 'Waits for your answer in {n} sessions.',
  unreviewed: 'Sessions to review: {n}.',
  mix: '{inMix} of {balls} balls after enough rehearsals ({rehearsals} to {asked}), last {days} days.',
  ballsNotAsked: 'Balls in the last {days} days: {balls}. The plan asks for rehearsals only.',
  muchVolume: '{n} repetitions in 7 days, plan: at most {most}.',
  littleVolume: '{n} repetitions in 14 days, the plan has room for {most}.',
  neverPractised: 'Joined {days} days ago, no practice yet.',
  joinedSimulated: 'Joined {days} days ago, only simulated sessions so far.',
  noPractice: 'No practice for {days} days.',
  noPracticeYet: 'No practice yet.',
  onlySimulated: 'Only simulated sessions so far.',
  well: 'Practises as planned.',
} as const;

/** What a warning of a student says to the coach. */
export const WARNING_NEEDS: Readonly<Record<WarningId, string>> = {
  'red-flag': 'Reported a sign that can need urgent care.',
  'pain-high': 'Pain stopped the session.',
  'pain-now': 'Pain warning.',
  'pain-next-day': 'Pain had not settled since the session before.',
  'own-range': 'Arm near the end of the comfortable range.',
  'trunk-own-range': 'Trunk beyond the comfortable range.',
  volume: 'More repetitions than usual or planned.',
  missed: 'Two of five catches missed.',
  club: 'Space, shoes, floor and club were not confirmed.',
  history: 'Health questions were not confirmed.',
  'warm-up': 'No warm-up was noted.',
};
