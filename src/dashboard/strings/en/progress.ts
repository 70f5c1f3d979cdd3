import { count } from './count.ts';

const day = new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium' });

/** The course over sessions. */
export const progress = {
  title: 'Progress',
  loading: 'Gathering your sessions.',
  range: 'Range',
  ranges: { all: 'All', threeMonths: '3 months', month: '1 month' },
  none: 'No session has been analysed yet. After the first practice its measures stand here.',
  noneInRange: 'No practice in this range.',
  one: 'One session is no course yet: the points show where you are, not where you are going.',
  few: (n: number): string =>
    `${count(n, 'session')}: too few to tell a course from chance. Look again after some more.`,
  days: {
    title: 'Practice days',
    text: (days: number, of: number, sessions: number, repetitions: number): string =>
      `Practised on ${days} of ${count(of, 'day')}: ${count(sessions, 'session')}, ${count(repetitions, 'repetition')} (rehearsals and balls).`,
    longest: (n: number): string => (n === 0 ? '' : `Longest break: ${count(n, 'day')}.`),
    legend: 'Square: practised, larger with more repetitions. Dot: not. Ring: with a warning.',
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
      `most repetitions a session and a week: ${before}, now ${after}`,
    stage: (before: string, after: string): string => `stage ${before}, now ${after}`,
    other: () => 'name, note or checklist',
  },
  noTarget: 'no target',
  marks: 'Also marked',
  legend: {
    title: 'How to read it',
    rehearsals: 'Rehearsals: median of a session',
    balls: 'Balls: median of a session',
    quartiles: 'Bar: the middle half',
    open: 'Open: fewer than three repetitions',
    band: 'Shaded: the target as the plan had it then',
    plan: 'Diamond: the plan changed',
    warning: 'Post at the bottom: a warning',
    mark: 'Dashed line: a note of a day',
  },
  measures: 'Measures',
  series: { rehearsals: 'rehearsals', balls: 'balls', before: 'before', after: 'after' },
  at: (series: string, value: string, spread: string, n: number | null): string =>
    `${series} ${value}${spread === '' ? '' : ` (${spread})`}${n === null ? '' : `, n ${n}`}`,
  notTaken: (series: string): string => `${series} not taken`,
  chart: (name: string): string =>
    `${name} over the sessions; the values of the chosen session stand above`,
  sure: (text: string): string => `One value is sure to ${text}.`,
  passed: 'Rehearsals passed',
  passedNote: 'Share of the scored rehearsals that met every target of the plan at that time.',
  carryOver: 'Carry-over to balls',
  carryOverNote:
    'The balls’ median divided by the rehearsals’. 100 %: the same movement. Kept rotation is mostly a loss: more than 100 % means that balls lose more. Left out with fewer than three of either, or where the rehearsals’ median is near zero.',
  carry: { addedFlexion: 'added flexion', keptRotation: 'kept rotation' },
  painTitle: 'Pain',
  painNote: 'As rated, 0 to 10, before and after each session.',
  painScale: 'of 10',
  nothing: 'Not taken in this range.',
  table: 'As a table',
  columns: { date: 'Date' },
};
