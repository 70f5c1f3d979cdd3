import { count } from './count.ts';

const MOST_NAMES = 3;

const names = (all: readonly string[]): string =>
  all.length <= MOST_NAMES
    ? all.join(', ')
    : `${all.slice(0, MOST_NAMES).join(', ')} and ${all.length - MOST_NAMES} more`;

/** What pages say when something changed while they were open. */
export const news = {
  students: (changed: readonly string[]): string => `New: ${names(changed)}.`,
  waiting: 'New data arrived. It appears when you pause.',
  show: 'Show now',
  sessions: (n: number): string => `${count(n, 'new session')} arrived.`,
  analysed: (n: number): string => `${count(n, 'session')} analysed.`,
  comments: (n: number): string => `${count(n, 'new comment')}.`,
  commentBy: (name: string): string => `New comment by ${name}.`,
  film: 'Film added.',
  measured: 'Analysis finished. The numbers are up to date.',
  analysing: 'Being analysed again. The numbers below update automatically.',
};
