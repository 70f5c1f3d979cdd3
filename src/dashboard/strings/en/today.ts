import { count } from './count.ts';
import type { Toward } from '../../../coaching/sinceLast.ts';
import { BEST_RULE, TYPICAL_RULE } from '../../../coaching/representative.ts';

/** The first screen and the end of a practice. */
export const today = {
  title: 'Today',
  plan: (rehearsals: number, balls: number, hold: string) =>
    balls === 0
      ? `Rehearsals only. Hold the top for ${hold}.`
      : `${count(rehearsals, 'rehearsal')}, then ${balls === 1 ? 'a ball' : `${balls} balls`}. Hold the top for ${hold}.`,
  noHold: 'as long as you like',
  start: 'Start a practice',
  goOn: 'Continue the practice',
  demo: 'Watch the simulated student',
  hand: 'You play',
  hands: { right: 'right-handed', left: 'left-handed' },
  sensors: 'With',
  sensorKinds: { demo: 'demo sensors', bluetooth: 'my own sensors' },
  demoWhy: 'Demo sensors replace real ones: a simulated student follows the instructions.',
  ownWhy: 'Choose and check them on the Sensors page first.',
  last: (when: string, repetitions: number) =>
    repetitions === 0
      ? `Last time: ${when}, ended before the first repetition.`
      : `Last time: ${when}, ${count(repetitions, 'repetition')}.`,
  lastState: {
    recording: (when: string) => `Last time: ${when}, being recorded now.`,
    analysing: (when: string) => `Last time: ${when}. It is being analysed.`,
    failed: (when: string) => `Last time: ${when}. It could not be analysed:`,
  },
  since: {
    title: 'Since last time',
    first: 'After your next practice you see here what changed.',
    'too-few': 'Too few rehearsals to compare.',
    same: 'About as last time: no measure changed by more than its uncertainty.',
    changed: (name: string, now: string, before: string, difference: string, sure: string) =>
      `${name} ${now}, before ${before} (${difference} ${sure})`,
    toward: {
      reached: 'now on target',
      nearer: 'closer to the target',
      farther: 'farther from the target',
      left: 'no longer on target',
    } satisfies Record<Exclude<Toward, null>, string>,
    of: (now: number, before: number) => `Medians of ${now} and ${before} rehearsals.`,
    focus: 'Focus today',
    again: (cue: string, times: number, of: number) =>
      `${cue} Needed in ${times} of ${of} rehearsals last time.`,
    painFirst:
      'Pain comes first: follow the advice of your last practice before you practise again.',
    fewer: 'Do fewer repetitions than last time.',
  },
  proposal: {
    title: 'Next step',
    some: (met: number, asked: number, times: number) =>
      `${met} of ${count(asked, 'target')} met in ${times} practices in a row.`,
    all: (times: number) => `All targets met in ${times} practices in a row.`,
    target: (name: string, target: string) => `Now work on: ${name}, ${target}.`,
    stage: (name: string) => `You can go on to “${name}”.`,
    done: 'This is the last stage of the plan: it is time for new targets.',
    askCoach: 'Ask your coach about it.',
    change: 'Change the plan',
  },
  lastNote: 'Your note',
  firstTitle: 'The rehearsal',
  needTitle: 'What you need',
  need: [
    'Two motion sensors: on the breastbone and on the trail upper arm',
    'A short or padded club, 3 m of clear space, a soft floor',
    'This computer, close enough to hear',
  ],
};

export const after = {
  title: 'After the practice',
  closeTitle: 'How was it?',
  note: 'A note for next time',
  noteHint: 'What you felt, what worked',
  close: 'Save and close',
  kept: 'Saved.',
  noSummary: 'Nothing was measured in this session.',
  passed: (passed: number, scored: number) => `${passed} of ${scored} passed`,
  nothingScored: 'No rehearsal could be scored',
  facts: (rehearsals: string, balls: string, minutes: string) =>
    `${rehearsals}, ${balls} in ${minutes} min`,
  next: 'Next time',
  byMeasure: 'By measure',
  median: 'median',
  cue: 'Most frequent cue',
  cueTimes: (times: number) => (times === 1 ? 'once' : `${times} times`),
  noCue: 'No corrections needed.',
  mix: 'The mix',
  mixKept: (kept: number, balls: number) =>
    `${kept} of ${count(balls, 'ball')} came after enough rehearsals`,
  noBalls: 'No balls.',
  carryOver: 'Carry-over to balls',
  carry: {
    addedFlexion: 'added bend, balls compared with rehearsals',
    keptRotation: 'arm rotation, balls compared with rehearsals',
  },
  tooLittle: 'not enough data',
  best: 'Best',
  bestAndTypical: 'Best and typical',
  typical: 'Typical',
  bestRule: BEST_RULE,
  typicalRule: TYPICAL_RULE,
  repetition: (index: number) => `repetition ${index}`,
  moments: { address: 'address', top: 'top', end: 'catch' },
  notSeen: 'not detected',
  today: 'Back to Today',
  again: 'Start another practice',
};
