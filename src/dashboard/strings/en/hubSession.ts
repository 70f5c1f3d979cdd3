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
  bar: 'Review',
  reviewed: (ms: number): string => `Reviewed ${day(ms)}`,
  notReviewed: 'Not reviewed',
  mark: 'Mark as reviewed',
  unmark: 'Take the mark back',
  next: 'Next to review',
  nothingNext: 'Nothing else waits for a review.',
  older: 'Older session',
  newer: 'Newer session',
  compareOlder: 'Compare with the older session',
  underPlan: (number: number | null, name: string): string =>
    number === null
      ? `Judged by the plan it was done under: ${name}.`
      : `Judged by the plan it was done under: version ${number}, ${name}.`,
  differences: 'Where the hub and the student’s computer differ',
  relabels: 'Set by hand',
  relabelled: (index: number, kind: string, found: string, by: string, ms: number): string =>
    `Repetition ${index}: ${kind}, found as ${found}; ${by}, ${day(ms)}`,
  exports: sessions.exports,
  remove: 'Delete this session',
  removeTitle: 'Delete this session?',
  removeWhy:
    'The recording, its films and comments are deleted here and cannot be brought back. What lies on the student’s own computer stays there.',
  formats: EXPORTS.map((format): readonly [ExportFormat, string] => [
    format,
    sessions.formats[format],
  ]),

  kinds: { rehearsal: 'a rehearsal', ball: 'a ball', ignore: 'nothing to count' },
  originals: { rehearsal: 'a rehearsal', ball: 'a ball', practiceSwing: 'a practice swing' },
  relabel: {
    title: 'What was it?',
    asFound: (kind: string): string => `as found: ${kind}`,
    why: 'It is then measured, judged and counted as what you say; what it was found as stays to be seen.',
    by: (by: string, ms: number): string => `Set by ${by}, ${day(ms)}.`,
  },

  comments: {
    title: 'Comments',
    here: 'On this repetition',
    none: 'Nothing was written yet.',
    noneHere: 'Nothing was written on this repetition yet.',
    write: 'Comment',
    reply: 'Answer',
    replyTo: (name: string): string => `Answer to ${name}`,
    send: 'Send',
    keys: 'Ctrl and Enter send, Escape leaves the field.',
    on: 'It is about',
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
    },
    by: (name: string, role: string): string => `${name}, ${role}`,
    role: { coach: 'coach', student: 'student' },
    at: moment,
    count: (n: number): string => count(n, 'comment'),
    remove: 'Remove',
    removeOf: (text: string): string => `Remove the comment: ${text.slice(0, 40)}`,
    block: 'Ready text',
    blockNone: 'put in a ready text',
    noBlocks: 'Your ready texts stand here once you made some',
  },

  clips: {
    title: 'Film',
    none: 'No film is attached.',
    attach: 'Attach a film (mp4 or webm)',
    size: (mb: number): string => `${mb} MB`,
    most: (mb: number): string =>
      `At most ${mb} MB. It is kept with the session and only you two see it.`,
    sending: (name: string): string => `Sending ${name} …`,
    sent: 'The film is attached.',
    tooBig: (mb: number): string =>
      `The film is larger than ${mb} MB. Cut it to the repetitions that matter.`,
    wrongType:
      'Only mp4 and webm films can be attached. Where a phone makes .mov files, set its camera to the format that most devices play (H.264), or convert the film to mp4.',
    by: (name: string): string => `by ${name}`,
    choose: 'Which film',
    remove: 'Remove the film',
    view: 'Seen',
    views: { 'face-on': 'face on', 'down-the-line': 'down the line' },
    viewUnknown: 'not said',
    inLine: 'Lined up: scrubbing moves film and curves together.',
    notInLine: 'Not lined up yet: film and curves run apart.',
    outside: 'The film does not show this moment.',
    open: 'Open a repetition to see the film beside its curves.',
    failed:
      'This browser cannot play the film. Films in HEVC (H.265) play in few browsers: set the phone’s camera to H.264, or convert the film to mp4 with H.264.',
    back: 'One picture back',
    on: 'One picture on',
    speed: 'Speed',
    speeds: [
      [0.25, 'quarter'],
      [0.5, 'half'],
      [1, 'real time'],
    ] as const,
    lineUp: {
      title: 'Line up film and curves',
      oneTitle: 'With one moment',
      oneCatch: 'Stop the film at the picture of the catch, then:',
      oneImpact: 'Stop the film at the picture of the impact, then:',
      isCatch: 'This picture is the catch',
      isImpact: 'This picture is the impact',
      notSeen:
        'The catch of this repetition was not seen. Take three moments, or another repetition.',
      threeTitle: 'With three moments',
      three:
        'Three taps, or any three moments that are seen in both: mark each in the film and in the curves, in the same order.',
      inFilm: (n: number): string => `Mark in the film (${n} of 3)`,
      inCurves: (n: number): string => `Mark in the curves (${n} of 3)`,
      use: 'Line up by these',
      again: 'Start again',
      spread: (ms: number): string => `The three agree within ${ms} ms.`,
      badSpread: (ms: number): string =>
        `The three differ by ${ms} ms: one of them is probably another moment.`,
      needAll: 'Three in each are needed.',
      undo: 'Undo the line-up',
    },
    camera: {
      title: 'Before filming',
      items: [
        'Down the line: the camera in line with the stance line, about breastbone height.',
        'Face on: the camera square to the stance line, same height.',
        'On a stand, level, the whole body and the club at the top in the picture.',
        'Tap the chest sensor three times in the picture at the start: the film can be lined up by that.',
        '60 pictures a second or more, good light.',
      ],
      basis: 'Common practice, no source.',
    },
  },
  offset,
};
