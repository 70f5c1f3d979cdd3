import { count } from './count.ts';
import { day } from './hubShell.ts';

const month = (ms: number): string =>
  new Date(ms).toLocaleDateString('en-GB', { month: 'long', year: 'numeric' });

/** The report that a coach prints and hands to a student. */
export const report = {
  title: (name: string): string => `Report: ${name}`,
  settings: 'Report contents',
  range: 'Months',
  ranges: [
    [1, 'this month'],
    [3, 'the last 3 months'],
    [6, 'the last 6 months'],
    [12, 'the last 12 months'],
  ] as const,
  words: 'Message',
  comments: 'Comments to print',
  noComments: 'No comments in these months.',
  print: 'Print or save as PDF',
  paper: 'Fits A4 and Letter. Choose the paper in the print dialog.',
  back: 'Back to the student',

  head: (club: string): string => `${club} · practice report`,
  about: (coach: string, fromMs: number, toMs: number, printedMs: number): string =>
    `Coach ${coach} · ${day(fromMs)} to ${day(toMs)} · printed ${day(printedMs)}`,
  simulated: 'Some of these sessions are simulated.',
  toYou: 'From your coach',
  practice: 'Practice month by month',
  columns: {
    month: 'Month',
    days: 'Practice days',
    sessions: 'Sessions',
    rehearsals: 'Rehearsals',
    passed: 'Passed',
    balls: 'Balls',
    mix: 'In the mix',
    warnings: 'Warnings',
  },
  month,
  share: (part: number, of: number): string =>
    of === 0 ? '–' : `${part} of ${of} (${Math.round((100 * part) / of)}\u00a0%)`,
  none: 'No sessions in these months.',
  measures: 'Measures over time',
  legend: {
    title: 'What is drawn',
    rehearsals: 'rehearsals: median of a session',
    balls: 'balls: median of a session',
    half: 'middle half of the session',
    target: 'target of the current plan',
    change: 'plan changed',
    lesson: 'lesson',
  },
  few: (n: number): string => `Only ${count(n, 'session')}: too few to show a trend.`,
  carryOver: 'Carry-over',
  carryOverIs:
    'Carry-over: the balls’ median divided by the rehearsals’, of the newest session that allows it. 100 % is the same movement, 0 % none of it. For the arm, mostly a loss, more than 100 % means that balls lose more.',
  carry: (name: string, value: string, ms: number): string => `${name}: ${value} (${day(ms)})`,
  carryNone: 'No session had at least three usable rehearsals and three usable balls.',
  addedFlexion: 'bend added beyond the turn',
  keptRotation: 'arm kept rotated outward',
  plan: 'Plan',
  planColumns: { measure: 'Measure', target: 'Target', last: 'Your last values' },
  last: (median: string, n: number): string => `${median} (n ${n})`,
  notTaken: 'not measured',
  checklist: 'Checklist',
  changes: 'Plan changes',
  lessons: 'Lessons',
  said: 'Comments',
  saidBy: (by: string, ms: number, where: string): string => `${by}, ${day(ms)}, ${where}`,
  accuracy: 'Accuracy of these numbers',
  accuracyLine: (name: string, text: string, source: string): string =>
    `${name}: ${text} (${source}).`,
  cautions: 'Cautions',
  cautionLines: [
    'Stop on pain. At 4 or 5 of 10, or 2 more than at the start: stop for today; if it is still there tomorrow, see a licensed health professional.',
    'Clear 3 m around you before each session. No children, pets or onlookers.',
    'This tool cannot tell you a safe angle or the load on your back, it makes no diagnosis, and it does not prevent injury.',
  ],
};
