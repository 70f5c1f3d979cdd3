import type { WarningId } from '../../../coaching/judgement.ts';
import { EXPORTS, type ExportFormat } from '../../../streaming/sessionsContract.ts';
import { count } from './count.ts';
import { day, moment } from './hubShell.ts';
import { sessions } from './sessions.ts';

/** `+0.12 s` */
const offset = (s: number): string => `${s < 0 ? '−' : '+'}${Math.abs(s).toFixed(2)} s`;

/** One session on the hub and what is said about it. */
export const session = {
  title: (name: string, ms: number): string => `${name}, ${moment(ms)}`,
  opening: 'Session',
  step: (name: string): string => `What ${name} was told at the end`,
  /** A warning as the coach reads it. @param rating as it stands in the warning, where it does */
  warned: {
    'pain-now': (name, rating) =>
      rating === null
        ? `${name} was warned of pain and asked to stop for the day.`
        : `${name} rated pain ${rating} of 10 and was asked to stop for the day.`,
    'pain-high': (name, rating) =>
      rating === null
        ? `${name} reported strong pain or a sign of it. The session ended there.`
        : `${name} rated pain ${rating} of 10 or reported a sign of it. The session ended there.`,
    'pain-next-day': (name) => `${name}’s pain had not settled since the session before.`,
    'red-flag': (name) =>
      `${name} reported a sign that can need urgent care and was asked to seek medical help.`,
    'own-range': (name) => `${name}’s arm came near the end of the range measured as comfortable.`,
    'trunk-own-range': (name) => `${name}’s trunk went beyond the range measured as comfortable.`,
    volume: (name) => `More repetitions than ${name}’s usual or the plan’s.`,
    missed: (name) => `${name} missed two of the last five catches.`,
    club: (name) => `${name} did not confirm space, shoes, floor and club.`,
    history: (name) => `${name} did not confirm the health questions.`,
    'warm-up': (name) => `${name} noted no warm-up.`,
  } satisfies Record<
    WarningId,
    (name: string, rating: string | number | null) => string
  > as Readonly<Record<WarningId, (name: string, rating: string | number | null) => string>>,
  bar: 'Review',
  reviewed: (ms: number): string => `Reviewed ${day(ms)}`,
  notReviewed: 'Not reviewed',
  mark: 'Mark as reviewed',
  unmark: 'Mark as not reviewed',
  next: 'Next to review',
  nothingNext: 'No other sessions to review.',
  older: 'Older session',
  newer: 'Newer session',
  compareOlder: 'Compare with the older session',
  underPlan: (number: number | null, name: string): string =>
    number === null
      ? `Scored with the plan of that day: ${name}.`
      : `Scored with the plan of that day: version ${number}, ${name}.`,
  failed: 'Not analysed again',
  analyseAgain: 'Analyse again',
  differences: 'Differences between the hub and the student’s computer',
  relabels: 'Corrected by hand',
  relabelled: (index: number, kind: string, found: string, by: string, ms: number): string =>
    `Repetition ${index}: ${kind}, detected as ${found}; ${by}, ${day(ms)}`,
  exports: sessions.exports,
  remove: 'Delete this session',
  removeTitle: 'Delete this session?',
  removeWhy:
    'The recording, its films and comments are permanently deleted here. The copy on the student’s own computer stays.',
  formats: EXPORTS.map((format): readonly [ExportFormat, string] => [
    format,
    sessions.formats[format],
  ]),

  kinds: { rehearsal: 'a rehearsal', ball: 'a ball', ignore: 'nothing to count' },
  originals: { rehearsal: 'a rehearsal', ball: 'a ball', practiceSwing: 'a practice swing' },
  relabel: {
    title: 'What was it?',
    asFound: (kind: string): string => `as detected: ${kind}`,
    why: 'It is measured, scored and counted as the kind you choose. The detected kind stays visible.',
    by: (by: string, ms: number): string => `Set by ${by}, ${day(ms)}.`,
  },

  comments: {
    title: 'Comments',
    here: 'On this repetition',
    none: 'No comments yet.',
    noneHere: 'No comments on this repetition yet.',
    write: 'Comment',
    reply: 'Reply',
    replyTo: (name: string): string => `Reply to ${name}`,
    send: 'Send',
    keys: 'Ctrl+Enter: send. Escape: leave the field.',
    on: 'About',
    pins: {
      repetition: (index: number): string => `repetition ${index}`,
      moment: (s: number): string => `this moment (${offset(s)})`,
      session: 'the whole session',
    },
    pinned: {
      repetition: (index: number): string => `Repetition ${index}`,
      moment: (at: string, index: number | null): string =>
        index === null ? `At ${at}` : `Repetition ${index}, at ${at}`,
      session: 'Whole session',
      note: 'On the note',
    },
    note: (name: string): string => `Note by ${name}`,
    by: (name: string, role: string): string => `${name}, ${role}`,
    role: { coach: 'coach', student: 'student' },
    at: moment,
    count: (n: number): string => count(n, 'comment'),
    remove: 'Delete',
    removeOf: (text: string): string => `Delete the comment: ${text.slice(0, 40)}`,
    block: 'Text snippet',
    blockNone: 'insert a snippet',
    noBlocks: 'Your text snippets appear here',
  },

  clips: {
    title: 'Film',
    none: 'No film attached.',
    attach: 'Attach a film (mp4 or webm)',
    size: (mb: number): string => `${mb} MB`,
    most: (mb: number): string =>
      `At most ${mb} MB. Saved with the session; only the two of you can see it.`,
    sending: (name: string): string => `Sending ${name} …`,
    sent: 'Film attached.',
    tooBig: (mb: number): string =>
      `The film is larger than ${mb} MB. Trim it to the repetitions that matter.`,
    wrongType:
      'Only mp4 and webm films can be attached. Where a phone makes .mov files, set its camera to the format that most devices play (H.264), or convert the film to mp4.',
    by: (name: string): string => `by ${name}`,
    choose: 'Choose film',
    remove: 'Delete film',
    view: 'Camera view',
    views: { 'face-on': 'face on', 'down-the-line': 'down the line' },
    viewUnknown: 'not set',
    inLine: 'In sync: the slider moves film and curves together.',
    notInLine: 'Not in sync yet: film and curves move separately.',
    outside: 'The film does not show this moment.',
    open: 'Open a repetition to see the film beside its curves.',
    failed:
      'This browser cannot play the film. Films in HEVC (H.265) play in few browsers: set the phone’s camera to H.264, or convert the film to mp4 with H.264.',
    back: 'Previous frame',
    on: 'Next frame',
    speed: 'Speed',
    speeds: [
      [0.25, 'quarter'],
      [0.5, 'half'],
      [1, 'real time'],
    ] as const,
    lineUp: {
      title: 'Sync film and curves',
      oneTitle: 'With one moment',
      oneCatch: 'Pause the film at the catch, then:',
      oneImpact: 'Pause the film at impact, then:',
      isCatch: 'This frame is the catch',
      isImpact: 'This frame is the impact',
      notSeen:
        'The catch of this repetition was not detected. Use three moments, or another repetition.',
      threeTitle: 'With three moments',
      three:
        'Three taps, or any three moments visible in both: mark each in the film and in the curves, in the same order.',
      inFilm: (n: number): string => `Mark in the film (${n} of 3)`,
      inCurves: (n: number): string => `Mark in the curves (${n} of 3)`,
      use: 'Sync with these',
      again: 'Start again',
      spread: (ms: number): string => `The three moments agree within ${ms} ms.`,
      badSpread: (ms: number): string =>
        `The three moments differ by ${ms} ms. One of them is probably a different moment.`,
      needAll: 'Mark three in each.',
      undo: 'Undo sync',
    },
    camera: {
      title: 'Before filming',
      items: [
        'Down the line: camera in line with the stance line, about breastbone height.',
        'Face on: camera square to the stance line, same height.',
        'On a stand, level, with the whole body and the club at the top in view.',
        'Tap the chest sensor three times on camera at the start, to sync the film later.',
        '60 frames per second or more, good light.',
      ],
      basis: 'Common practice, not from a study.',
    },
  },
  offset,
};
