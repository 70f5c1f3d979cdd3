import { count } from './count.ts';
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
  goOn: 'Go on with the practice',
  demo: 'Watch the simulated student',
  hand: 'You play',
  hands: { right: 'right-handed', left: 'left-handed' },
  sensors: 'With',
  sensorKinds: { demo: 'demo sensors', bluetooth: 'my own sensors' },
  demoWhy: 'Demo sensors stand in for real ones: a simulated student does what you are asked.',
  ownWhy: 'Choose and check them on the Sensors page first.',
  last: (when: string, repetitions: number) =>
    `Last time: ${when}, ${count(repetitions, 'repetition')}.`,
  lastNote: 'Your note',
  firstTitle: 'The rehearsal',
  first: [
    {
      word: 'Hold',
      text: 'Swing to the top and be still.',
    },
    {
      word: 'Release',
      text: 'Let go of the club: the chest turns and bends down first, the arms wait.',
    },
    {
      word: 'Catch',
      text: 'Catch the falling club with the trail arm still turned out.',
    },
  ],
  needTitle: 'What you need',
  need: [
    'Two motion sensors: on the breastbone and on the trail upper arm',
    'A short or padded club, 3 m of clear space, a soft floor',
    'This computer where you can hear it',
  ],
};

export const after = {
  title: 'After the practice',
  closeTitle: 'How was it?',
  note: 'A note for next time',
  noteHint: 'What you felt, what you want to keep',
  close: 'Keep and close',
  kept: 'Kept.',
  noSummary: 'Nothing was measured in this session.',
  passed: (passed: number, scored: number) => `${passed} of ${scored} passed`,
  nothingScored: 'No rehearsal could be scored',
  facts: (rehearsals: string, balls: string, minutes: string) =>
    `${rehearsals}, ${balls} in ${minutes} min`,
  next: 'Next time',
  byMeasure: 'By measure',
  median: 'median',
  cue: 'What was said most',
  cueTimes: (times: number) => (times === 1 ? 'once' : `${times} times`),
  noCue: 'Nothing had to change.',
  mix: 'The mix',
  mixKept: (kept: number, balls: number) => `${kept} of ${count(balls, 'ball')} came in turn`,
  noBalls: 'No ball was hit.',
  carryOver: 'Carry-over to balls',
  carry: {
    addedFlexion: 'bend added, balls against rehearsals',
    keptRotation: 'arm rotation, balls against rehearsals',
  },
  tooLittle: 'too little to say',
  best: 'Best',
  bestAndTypical: 'Best, and typical',
  typical: 'Typical',
  bestRule: BEST_RULE,
  typicalRule: TYPICAL_RULE,
  repetition: (index: number) => `repetition ${index}`,
  moments: { address: 'address', top: 'top', end: 'catch' },
  notSeen: 'not seen',
  today: 'Back to today',
  again: 'Start another',
};
