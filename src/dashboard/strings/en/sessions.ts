import { count } from './count.ts';

const dayAndTime = new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short' });
const dateOf = (iso: string): string => dayAndTime.format(new Date(iso));

/** Kept sessions: the list and one of them. */
export const sessions = {
  title: 'Sessions',
  loading: 'Looking for your sessions.',
  none: 'Nothing is kept yet. Each practice is, from its first second.',
  folder: (path: string): string => `Kept on this computer in ${path}`,
  back: 'All sessions',
  date: dateOf,
  length: (s: number | null): string =>
    s === null ? 'length not known' : `${Math.max(1, Math.round(s / 60))} min`,
  hand: { left: 'left-handed', right: 'right-handed' },
  states: {
    recording: 'recording now',
    complete: '',
    interrupted: 'interrupted: all that was written is here',
    unread: 'not looked at yet',
  },
  simulated: 'simulated',
  passed: (passed: number, scored: number): string =>
    scored === 0 ? 'no rehearsal scored' : `${passed} of ${scored} rehearsals passed`,
  balls: (inMix: number, balls: number): string =>
    balls === 0 ? 'no balls' : `${count(balls, 'ball')}, ${inMix} in the mix`,
  warnings: (n: number): string => count(n, 'warning'),
  open: 'Open',
  import: 'Import a session (.zip)',
  drop: 'Or drop session files anywhere on this page. A recording from another computer, for instance one that came by mail.',
  dropNow: 'Let go to import.',
  importing: 'Importing and analysing …',
  imported: (n: number): string => (n === 1 ? 'Imported.' : `${n} sessions imported.`),
  refused: (name: string, why: string): string => `${name} was not imported: ${why}`,
  notZip: (name: string): string =>
    `${name} was not imported: it is no .zip. A session travels as one .zip file.`,
  emptyFile: (name: string): string => `${name} was not imported: it is empty.`,
  tooLarge: (name: string, mb: number): string =>
    `${name} was not imported: it is larger than ${mb} MB.`,
  remove: 'Delete',
  removed: (date: string): string => `The session of ${date} is deleted.`,
  undo: 'Undo',
  broughtBack: 'It is back.',
  notAnalysed: 'This session has no analysis yet.',
  repetitions: 'Repetitions in order',
  table: 'Each repetition',
  columns: { number: 'No.', kind: 'Kind', at: 'At', verdict: 'Verdict' },
  at: (s: number): string => `${Math.floor(s / 60)}:${String(Math.floor(s % 60)).padStart(2, '0')}`,
  exports: 'Take it with you',
  print: 'Print this page',
  formats: {
    zip: 'Recording (.zip, Motion-BIDS)',
    csv: 'Repetitions (.csv)',
    angles: 'Angle curves (.csv)',
    sto: 'Orientations (.sto)',
  },
  basis:
    'Targets are coaching choices with no published norm. On people lean and flexion are sure to about 4 degrees, the arm to 10 to 15.',
  note: 'Note',
  pain: (before: number | null, after: number | null): string =>
    `Pain before ${before ?? 'not asked'}, after ${after ?? 'not asked'}`,
  notTaken: 'not taken',
  missed: 'target not reached',
};
