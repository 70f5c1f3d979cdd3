import { count } from './count.ts';
import { ago, day, moment } from './hubShell.ts';

/** One student of the coach. */
export const student = {
  facts: (hand: string, joinedMs: number): string => `${hand} · joined ${day(joinedMs)}`,
  paired: (contactMs: number | null, nowMs: number): string =>
    contactMs === null
      ? 'computer paired, no contact yet'
      : `computer last connected ${ago(contactMs, nowMs)}`,
  notPaired: 'no computer paired: sessions do not arrive automatically',
  review: (n: number): string => (n === 1 ? 'Review 1 session' : `Review ${n} sessions`),
  changePlan: 'Change plan',
  report: 'Printable report',
  compare: 'Compare two periods',
  needs: 'Needs attention',
  months: {
    title: 'Months at a glance',
    none: 'Appears here once sessions have arrived.',
  },
  sessions: {
    title: 'Sessions',
    none: 'No sessions yet.',
    noneHelp:
      'Sessions arrive automatically once the student has paired a computer and turned on sending.',
    reviewed: (ms: number): string => `reviewed ${day(ms)}`,
    notReviewed: 'not reviewed',
    comments: (n: number): string => count(n, 'comment'),
    warnings: (n: number): string => count(n, 'warning'),
    pain: (before: number | null, after: number | null): string =>
      `pain ${before ?? 'not asked'} before, ${after ?? 'not asked'} after`,
    more: 'Older sessions',
    mail: 'Import a session (.zip)',
    mailed: 'Imported. It is being analysed.',
    all: (n: number): string => `Show all ${n}`,
  },
  plan: {
    title: 'Plan',
    now: (number: number, name: string): string => `Version ${number}: ${name}`,
    from: (ms: number, by: string): string => `valid from ${day(ms)}, by ${by}`,
    reached: (ms: number): string => `received by the student's computer ${moment(ms)}`,
    notReached: "not yet received by the student's computer",
    asks: (rehearsals: number, balls: number): string =>
      balls === 0
        ? 'rehearsals only'
        : `${count(rehearsals, 'rehearsal')} for every ${balls === 1 ? 'ball' : `${balls} balls`}`,
    volume: (session: number, week: number): string =>
      `at most ${session} repetitions per session, ${week} per week`,
    history: 'Versions',
    first: 'The first version.',
    same: 'No changes to scoring.',
    again: 'Start from this version',
    again_of: (number: number): string => `version ${number}`,
  },
  lessons: {
    title: 'Lessons',
    none: 'Add the days you met. They are marked in the progress charts.',
    day: 'Day',
    about: 'Topic',
    add: 'Add lesson',
    remove: (ms: number): string => `Delete the lesson of ${day(ms)}`,
  },
  machines: {
    title: 'Paired computers',
    none: 'No computer paired. The student can pair one under Pair a computer.',
    paired: (ms: number): string => `paired ${day(ms)}`,
    seen: (ms: number | null): string =>
      ms === null ? 'no contact yet' : `last connected ${moment(ms)}`,
    revoked: (ms: number): string => `unpaired ${day(ms)}`,
    revoke: 'Unpair',
    revokeOf: (name: string): string => `Unpair ${name}`,
  },
  data: {
    title: "The student's data",
    export: 'Export everything (.zip)',
    exportWhy: 'All original recordings, plans, comments and lessons.',
    invite: 'New invitation link',
    inviteWhy: 'For a student who lost the link or the password.',
    remove: 'Delete everything',
    removeTitle: (name: string): string => `Delete all data of ${name}?`,
    removeWhy:
      'Recordings, films, plans, comments and the account are permanently deleted here. Data on the student’s own computer stays.',
    type: (name: string): string => `Type ${name} to confirm`,
    removeGo: 'Delete everything',
  },
  edit: {
    open: 'Change name or hand',
    title: 'Name and hand',
    name: 'Name',
    go: 'Save',
  },
  back: 'All students',
};

/** Changing the plan of one student. */
export const planChange = {
  title: (name: string): string => `${name}: plan`,
  start: 'Start from',
  now: (number: number): string => `current plan (version ${number})`,
  version: (number: number, fromMs: number): string => `version ${number}, from ${day(fromMs)}`,
  template: (name: string): string => `template: ${name}`,
  standard: 'standard plan',
  from: 'Valid from',
  fromWhy: 'Earlier sessions are still scored with the plan of their day.',
  badDay: 'Choose a day.',
  what: 'Changes',
  nothing: 'No changes yet.',
  invalid: 'Please correct the marked fields.',
  save: 'Save as new version',
  reaches: "The student's computer receives it at its next contact and shows what changed.",
  keep: 'Save as template',
  keepName: 'Template name',
  kept: (name: string): string => `Saved as template ${name}.`,
  clash: {
    title: 'This plan was changed meanwhile',
    what: (by: string, number: number, at: string): string =>
      `${by === '' ? 'Somebody' : by} saved version ${number} on ${at}, after you began. Nothing of yours is saved yet: choose for each field.`,
    columns: { what: 'Field', before: 'Before', theirs: 'Saved meanwhile', mine: 'Yours' },
    unchanged: '(as before)',
    empty: '(empty)',
    same: 'Both say the same: there is nothing left to save.',
    allTheirs: 'Take all of theirs',
    allMine: 'Take all of mine',
    open: (n: number): string =>
      n === 1 ? 'Both changed 1 field: choose one.' : `Both changed ${n} fields: choose for each.`,
    save: (number: number): string => `Save as version ${number}`,
    keepTheirs: (number: number): string => `Keep version ${number}, discard mine`,
    back: 'Back to my draft',
  },
};

/** Two periods of one student side by side. */
export const comparison = {
  title: (name: string): string => `${name}: compare two periods`,
  choose: 'Compare',
  presets: {
    weeks: 'the last 4 weeks with the 4 weeks before',
    year: 'the last 4 weeks with the same weeks a year ago',
    quarter: 'the last 12 weeks with the 12 weeks before',
    own: 'custom dates',
  },
  a: 'Earlier',
  b: 'Later',
  from: 'from',
  to: 'up to and including',
  asLong: 'Both equally long',
  period: (fromMs: number, toMs: number): string =>
    day(fromMs) === day(toMs - 1) ? day(fromMs) : `${day(fromMs)} to ${day(toMs - 1)}`,
  counted: (sessions: number, rehearsals: number, balls: number): string =>
    `${count(sessions, 'session')}, ${count(rehearsals, 'rehearsal')}, ${count(balls, 'ball')}`,
  empty: (which: string): string => `${which}: no sessions.`,
  noneCounted: (which: string): string => `${which}: no session that is counted.`,
  uneven: {
    days: (a: number, b: number): string =>
      `The periods are not equally long: ${count(a, 'day')} earlier, ${count(b, 'day')} later.`,
    sessions: (a: number, b: number): string =>
      `One period has far fewer sessions (${a} earlier, ${b} later): its usual session is less certain.`,
    overlap: 'The periods share days: their sessions count on both sides.',
    plans: (a: string, b: string): string =>
      `The plan changed (version ${a} earlier, ${b} later): a share passed is judged by the plan of its day.`,
    noPlan: 'none',
  },
  columns: {
    measure: 'Measure',
    difference: 'Difference (later minus earlier)',
    reading: 'Reading',
    a: 'Earlier',
    b: 'Later',
    overlay: 'Both on one axis',
  },
  kinds: {
    passed: 'Passed',
    rehearsals: 'Rehearsals',
    balls: 'Balls',
    carryOver: 'Carry-over',
  },
  all: 'all targets together',
  percent: (text: string): string => `${text}\u00a0%`,
  points: (text: string): string => `${text} points`,
  value: (median: string, low: string, high: string): string => `${median} (${low} to ${high})`,
  of: (sessions: number, repetitions: number): string =>
    `${count(sessions, 'session')}, ${count(repetitions, 'repetition')}`,
  ofSessions: (sessions: number): string => count(sessions, 'session'),
  none: 'none',
  interval: (low: string, high: string): string => `likely ${low} to ${high}`,
  notBoth: 'only in one period',
  tooFew: 'too few sessions to tell',
  sure: 'clear difference',
  small: 'real, but smaller than the measurement error',
  unsure: 'no clear difference',
  together: (n: number): string =>
    n === 1
      ? 'The range holds the true difference 95 times in 100.'
      : `${n} differences are looked at together, and with so many one would often look clear by chance. So each range is made wider: all ${n} hold the true differences at once, at least 95 times in 100.`,
  noneTogether: 'No range can be given: that takes at least 3 sessions in each period.',
  howTitle: 'How this is computed',
  note: 'Each session counts once, however many repetitions it had, because repetitions of one session resemble each other. A usual session is the mean of the sessions’ medians, and of the ends of their middle halves; of a share passed and of carry-over, the mean and the middle half of the sessions. The range is Welch’s interval for the difference of two means, widened for the number of differences (Bonferroni). Shaded: how sure a single value is. On one axis: the earlier above (ring), the later below (disc), each with its middle half.',
  strap:
    'A sensor worn in a different place shifts every value of a session. A difference of a few degrees between months may come from that.',
  badDays: 'Choose dates so that each period ends after it starts.',
};
