import {
  type AnalysisProgress,
  NOT_COUNTED,
  type NotCounted,
  type NotCountedCounts,
  type PracticeCounts,
  standingOf,
} from '../../../coaching/notCounted.ts';
import { count } from './count.ts';

const WHY: Readonly<Record<NotCounted, (n: number) => string>> = {
  recording: () => 'A practice is being recorded now.',
  analysing: (n) =>
    n === 1
      ? '1 session is being analysed and is not counted yet.'
      : `${n} sessions are being analysed and are not counted yet.`,
  failed: (n) =>
    n === 1
      ? '1 session could not be analysed and is not counted.'
      : `${n} sessions could not be analysed and are not counted.`,
  simulated: (n) =>
    n === 1
      ? '1 simulated session is not counted: nobody practised it.'
      : `${n} simulated sessions are not counted: nobody practised them.`,
};

/** What is in a count and what is not. */
export const counts = {
  notCounted: (counts: NotCountedCounts): readonly string[] =>
    NOT_COUNTED.flatMap((why) => (counts[why] > 0 ? [WHY[why](counts[why])] : [])),
  week: (week: PracticeCounts, limit: number): string =>
    standingOf(week) === 'unknown'
      ? `This week: not counted yet, at most ${count(limit, 'repetition')}.`
      : `This week: ${week.repetitions} of at most ${count(limit, 'repetition')}.`,
  onlySimulated: 'Only simulated sessions so far. They do not count as practice.',
  noneYet: 'No result yet.',
  /** How far one session is, in a line of facts. */
  session: {
    analysed: '',
    recording: 'recording now',
    analysing: 'being analysed',
    failed: 'not analysed',
  } satisfies Record<AnalysisProgress, string>,
};
