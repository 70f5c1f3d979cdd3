import { count } from './count.ts';
import { ago, day, moment } from './hubShell.ts';

/** One student of the coach. */
export const student = {
  facts: (hand: string, joinedMs: number): string => `${hand} · joined ${day(joinedMs)}`,
  paired: (contactMs: number | null, nowMs: number): string =>
    contactMs === null
      ? 'a computer is paired, it has not called yet'
      : `computer last heard of ${ago(contactMs, nowMs)}`,
  notPaired: 'no computer paired: sessions cannot arrive by themselves',
  review: (n: number): string => (n === 1 ? 'Review 1 session' : `Review ${n} sessions`),
  changePlan: 'Change the plan',
  report: 'Report to print',
  compare: 'Compare two stretches',
  needs: 'Why a look',
  months: {
    title: 'Months at a glance',
    none: 'The first months stand here once sessions have arrived.',
  },
  sessions: {
    title: 'Sessions',
    none: 'No session has arrived yet.',
    noneHelp:
      'They arrive by themselves once a computer of the student is paired and sending is switched on there.',
    reviewed: (ms: number): string => `reviewed ${day(ms)}`,
    notReviewed: 'not reviewed',
    comments: (n: number): string => count(n, 'comment'),
    waiting: 'waits for its analysis',
    simulated: 'simulated',
    passed: (passed: number, scored: number): string =>
      scored === 0 ? 'no rehearsal scored' : `${passed} of ${scored} rehearsals passed`,
    balls: (balls: number, inMix: number): string =>
      balls === 0 ? 'no balls' : `${count(balls, 'ball')}, ${inMix} in the mix`,
    warnings: (n: number): string => count(n, 'warning'),
    pain: (before: number | null, after: number | null): string =>
      `pain ${before ?? 'not asked'} before, ${after ?? 'not asked'} after`,
    more: 'Older sessions',
    mail: 'A session that came by mail (.zip)',
    mailed: 'It is here and waits for its analysis.',
    all: (n: number): string => `Show all ${n}`,
  },
  plan: {
    title: 'Plan',
    now: (number: number, name: string): string => `Version ${number}: ${name}`,
    from: (ms: number, by: string): string => `valid from ${day(ms)}, by ${by}`,
    reached: (ms: number): string => `reached the student's computer ${moment(ms)}`,
    notReached: "has not reached the student's computer yet",
    asks: (rehearsals: number, balls: number): string =>
      balls === 0
        ? 'rehearsals only'
        : `${count(rehearsals, 'rehearsal')} before ${count(balls, 'ball')}`,
    volume: (session: number, week: number): string =>
      `at most ${session} repetitions a session, ${week} a week`,
    history: 'Versions',
    first: 'The first version.',
    same: 'Nothing that is judged changed.',
    again: 'Start from this version',
    again_of: (number: number): string => `version ${number}`,
  },
  lessons: {
    title: 'Lessons',
    none: 'Note the days you met: progress is read from there.',
    day: 'Day',
    about: 'What it was about',
    add: 'Add the lesson',
    remove: (ms: number): string => `Remove the lesson of ${day(ms)}`,
  },
  machines: {
    title: 'Paired computers',
    none: 'None is paired. A student pairs one under Pair a computer.',
    paired: (ms: number): string => `paired ${day(ms)}`,
    seen: (ms: number | null): string =>
      ms === null ? 'not heard of yet' : `last heard of ${moment(ms)}`,
    revoked: (ms: number): string => `unpaired ${day(ms)}`,
    revoke: 'Unpair',
    revokeOf: (name: string): string => `Unpair ${name}`,
  },
  data: {
    title: "The student's data",
    export: 'Take everything with you (.zip)',
    exportWhy: 'Every recording as it came, with plans, comments and lessons.',
    invite: 'New invitation link',
    inviteWhy: 'For a student who lost the link or the password.',
    remove: 'Delete everything',
    removeTitle: (name: string): string => `Delete everything of ${name}?`,
    removeWhy:
      'Recordings, films, plans, comments and the account are deleted here, and cannot be brought back. What lies on the student’s own computer stays there.',
    type: (name: string): string => `Type ${name} to go on`,
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
  now: (number: number): string => `the plan of now (version ${number})`,
  version: (number: number, fromMs: number): string => `version ${number}, from ${day(fromMs)}`,
  template: (name: string): string => `template: ${name}`,
  standard: 'the standard plan',
  from: 'Valid from',
  fromWhy: 'Sessions before that day stay judged by the plan that they were done under.',
  badDay: 'Choose a day.',
  what: 'What will change',
  nothing: 'Nothing yet.',
  invalid: 'Something in the plan cannot be; it stands beside the field.',
  save: 'Save as a new version',
  reaches: "It reaches the student's computer when that next calls, and says there what changed.",
  keep: 'Keep as a template',
  keepName: 'Name of the template',
  kept: (name: string): string => `Kept as template ${name}.`,
};

/** Two stretches of one student side by side. */
export const comparison = {
  title: (name: string): string => `${name}: two stretches`,
  choose: 'Compare',
  presets: {
    year: 'This month with the same month a year ago',
    month: 'The last 4 weeks with the 4 before',
    quarter: 'The last 3 months with the 3 before',
    own: 'Own days',
  },
  a: 'Earlier',
  b: 'Later',
  from: 'from',
  to: 'up to and with',
  stretch: (fromMs: number, toMs: number): string =>
    day(fromMs) === day(toMs - 1) ? day(fromMs) : `${day(fromMs)} to ${day(toMs - 1)}`,
  counted: (sessions: number, rehearsals: number, balls: number): string =>
    `${count(sessions, 'session')}, ${count(rehearsals, 'rehearsal')}, ${count(balls, 'ball')}`,
  empty: (which: string): string => `${which}: no session.`,
  columns: {
    measure: 'Measure',
    a: 'Earlier',
    b: 'Later',
    overlay: 'Both on one axis',
    difference: 'Difference',
    reading: 'Reading',
  },
  kinds: { rehearsals: 'Rehearsals', balls: 'Balls' },
  value: (median: string, low: string, high: string): string => `${median} (${low} to ${high})`,
  of: (sessions: number, repetitions: number): string =>
    `${count(sessions, 'session')}, ${count(repetitions, 'repetition')}`,
  none: 'none',
  interval: (value: string, low: string, high: string): string => `${value} (${low} to ${high})`,
  notBoth: 'not measured in both',
  tooFew: 'too few to say how sure: fewer than 3 sessions in one of them',
  sure: 'differs: all of the likely range lies on one side of zero',
  small: 'differs, by less than one value is sure to',
  unsure: 'may be chance: the likely range holds zero',
  note: 'Value: a usual session, that is the mean of the sessions’ medians, and of the ends of their middle halves. Difference: later less earlier, with the range that holds the true one 95 times in 100 (Welch’s interval of the sessions’ medians). Each session counts once, however many repetitions it had, because repetitions of one session resemble each other; with fewer than 3 sessions on a side no range is given. Shaded: how sure a single value is. On one axis: the earlier above (ring), the later below (disc), each with its middle half.',
  strap:
    'A sensor strapped on elsewhere shifts every value of a session. A difference of a few degrees between months may be the strap.',
  badDays: 'Choose days so that each stretch ends after it begins.',
};
