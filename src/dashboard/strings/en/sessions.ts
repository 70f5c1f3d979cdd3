import { count } from './count.ts';

const dayAndTime = new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short' });
const dateOf = (iso: string): string => dayAndTime.format(new Date(iso));

/** Saved sessions: the list and one of them. */
export const sessions = {
  title: 'Sessions',
  loading: 'Loading your sessions …',
  none: 'No sessions yet. Every practice is saved automatically.',
  folder: (path: string): string => `Saved on this computer in ${path}`,
  back: 'All sessions',
  date: dateOf,
  length: (s: number | null): string =>
    s === null ? 'length unknown' : `${Math.max(1, Math.round(s / 60))} min`,
  hand: { left: 'left-handed', right: 'right-handed' },
  interrupted: 'interrupted: everything up to then is saved',
  simulated: 'simulated',
  notCounted: 'simulated: does not count as practice',
  passed: (passed: number, scored: number): string =>
    scored === 0 ? 'no rehearsal scored' : `${passed} of ${scored} rehearsals passed`,
  balls: (inMix: number, balls: number): string =>
    balls === 0 ? 'no balls' : `${count(balls, 'ball')}, ${inMix} in the mix`,
  warnings: (n: number): string => count(n, 'warning'),
  open: 'Open',
  import: 'Import a session (.zip)',
  drop: 'Or drop session files anywhere on this page, for instance a recording that came by mail.',
  dropNow: 'Drop to import.',
  importing: 'Importing and analysing …',
  imported: (n: number): string => (n === 1 ? 'Imported.' : `${n} sessions imported.`),
  refused: (name: string, why: string): string => `${name} was not imported: ${why}`,
  notZip: (name: string): string => `${name} was not imported: it is not a .zip file.`,
  emptyFile: (name: string): string => `${name} was not imported: it is empty.`,
  tooLarge: (name: string, mb: number): string =>
    `${name} was not imported: it is larger than ${mb} MB.`,
  remove: 'Delete',
  removed: (date: string): string => `Session of ${date} deleted.`,
  undo: 'Undo',
  broughtBack: 'Session restored.',
  notAnalysed: 'This session is not analysed yet.',
  repetitions: 'Repetitions in order',
  table: 'All repetitions',
  columns: { number: 'No.', kind: 'Kind', at: 'Time', verdict: 'Result' },
  at: (s: number): string => `${Math.floor(s / 60)}:${String(Math.floor(s % 60)).padStart(2, '0')}`,
  exports: 'Export',
  print: 'Print this page',
  formats: {
    zip: 'Recording (.zip, Motion-BIDS)',
    csv: 'Repetitions (.csv)',
    angles: 'Angle curves (.csv)',
    sto: 'Orientations (.sto)',
  },
  basis:
    'Targets are coaching choices, not published norms. Accuracy on people: lean and flexion about 4 degrees, arm rotation 10 to 15.',
  note: 'Note',
  edited: (ms: number): string => `edited ${dayAndTime.format(ms)}`,
  pain: (before: number | null, after: number | null): string =>
    `Pain before ${before ?? 'not asked'}, after ${after ?? 'not asked'}`,
  notTaken: 'not measured',
  missed: 'off target',
};
