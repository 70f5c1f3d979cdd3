import { count } from './count.ts';

const day = new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium' });

/** Progress over sessions. */
export const progress = {
  title: 'Progress',
  loading: 'Loading your sessions …',
  range: 'Period',
  ranges: { all: 'All', threeMonths: '3 months', month: '1 month' },
  none: 'No sessions yet. Your measures appear here after your first practice.',
  noneInRange: 'No practice in this period.',
  one: 'One session shows where you are, not yet where you are going.',
  few: (n: number): string =>
    `${count(n, 'session')}: too few to show a trend. Check again after a few more.`,
  days: {
    title: 'Practice days',
    text: (days: number, of: number, sessions: number, repetitions: number): string =>
      `Practised on ${days} of ${count(of, 'day')}: ${count(sessions, 'session')}, ${count(repetitions, 'repetition')} (rehearsals and balls).`,
    longest: (n: number): string => (n === 0 ? '' : `Longest break: ${count(n, 'day')}.`),
    legend: 'Square: practised (larger: more repetitions). Dot: no practice. Ring: with a warning.',
    weekdays: ['Mo', 'Tu', 'We', 'Th', 'Fr', 'Sa', 'Su'],
  },
  session: 'Session',
  open: 'Open this session',
  date: (ms: number): string => day.format(ms),
  facts: (passed: number, scored: number): string =>
    scored === 0 ? 'no rehearsal scored' : `${passed} of ${scored} rehearsals passed`,
  simulated: 'simulated',
  warnings: (n: number): string => count(n, 'warning'),
  pain: (before: string, after: string): string => `pain ${before} before, ${after} after`,
  notAsked: 'not asked',
  planChanged: 'Plan changed:',
  change: {
    target: (name: string, before: string, after: string): string =>
      `${name}: ${before}, now ${after}`,
    ratio: (before: string, after: string): string => `mix ${before}, now ${after}`,
    volume: (before: string, after: string): string =>
      `maximum repetitions per session and week: ${before}, now ${after}`,
    stage: (before: string, after: string): string => `stage ${before}, now ${after}`,
    other: () => 'name, note or checklist',
  },
  noTarget: 'no target',
  marks: 'Also on this day',
  legend: {
    title: 'How to read the charts',
    rehearsals: 'Rehearsals: median of the session',
    balls: 'Balls: median of the session',
    quartiles: 'Bar: half of the values',
    open: 'Open: fewer than three repetitions',
    band: 'Shaded: the target at that time',
    plan: 'Diamond: plan changed',
    warning: 'Bar at the bottom: warning',
    mark: 'Dashed line: note for a day',
  },
  measures: 'Measures',
  series: { rehearsals: 'rehearsals', balls: 'balls', before: 'before', after: 'after' },
  at: (series: string, value: string, spread: string, n: number | null): string =>
    `${series} ${value}${spread === '' ? '' : ` (${spread})`}${n === null ? '' : `; ${count(n, 'repetition')}`}`,
  notTaken: (series: string): string => `${series} not measured`,
  chart: (name: string): string =>
    `${name} over the sessions. The values of the selected session are shown above.`,
  sure: (text: string): string => `Accuracy of one value: ${text}.`,
  passed: 'Rehearsals passed',
  passedNote: 'Share of scored rehearsals that met every target of the plan at that time.',
  carryOver: 'Carry-over to balls',
  carryOverNote:
    'Median of the balls divided by the median of the rehearsals. 100 %: the same movement. The arm usually loses rotation, so more than 100 % means that balls lose more. Not shown with fewer than three rehearsals or balls, or if the rehearsals’ median is near zero.',
  carry: { addedFlexion: 'added flexion', keptRotation: 'kept rotation' },
  painTitle: 'Pain',
  painNote: 'Your ratings from 0 to 10, before and after each session.',
  painScale: 'of 10',
  nothing: 'Not measured in this period.',
  table: 'As a table',
  columns: { date: 'Date' },
};
