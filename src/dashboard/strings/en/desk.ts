import { localeWriting } from '../locale.ts';

const { written } = localeWriting('en-GB');

/** The sensors page. */
export const desk = {
  retryIn: (s: number) => (s > 0 ? ` in about ${s} s` : ' now'),
  title: 'Sensors',
  lead: 'Two sensors: one on the breastbone, one on the outside of the trail upper arm, just above the elbow.',
  opening: 'Asking the service for its sensors …',
  none: 'This service has no sensors page behind it.',
  demo: 'Everything else works without: the simulated student and recordings need no sensors.',
  notUsed:
    'The practice that runs now uses demo sensors. To practise with the ones chosen here, begin one with “my own sensors”.',
  toToday: 'Go to Today',
  notUsedReplay:
    'This service plays a recording and does not use these sensors. To practise with them, start it with: npm start -- --sensors bluetooth',
  problem: 'No Bluetooth',
  mend: 'What to do',
  detail: (words: string) => `Details: ${words}`,
  searching:
    'Searching. Switch the sensors on and lay them near this computer. Tap one to see which it is.',
  notSearching: 'Waiting for Bluetooth …',
  noSearch: 'Without Bluetooth nothing can be searched for.',
  recording:
    'A practice with the worn sensors is running, so nothing new is searched for: it would disturb the links. To search again, take one off or end the practice.',
  places: 'Worn',
  remembered: 'This computer remembers them and connects them again by itself.',
  around: 'Nearby',
  nothingAround:
    'No other sensor is heard. One that is connected elsewhere, to a phone for instance, is not heard.',
  place: {
    chest: () => 'On the breastbone',
    trailArm: (side: 'left' | 'right') => `Outside of the ${side} upper arm, just above the elbow`,
    club: () => 'Under the grip end; optional',
  },
  empty: 'No sensor yet',
  choose: 'Choose by tapping',
  chooseFor: (place: string) => `Choose by tapping: ${place.toLowerCase()}`,
  tapNow: 'Tap the sensor with a finger now',
  tapMissed:
    'No tap was felt that was clearly one sensor’s. Tap harder, or choose it under “Nearby”.',
  cancel: 'Cancel',
  unnamed: (end: string) => `Sensor without a name (${end})`,
  moving: 'this one is moving',
  wearOn: 'Wear on',
  wearGroup: (name: string) => `Where to wear ${name}`,
  wear: (place: string, name: string) => `Wear on ${place.toLowerCase()}: ${name}`,
  takeOff: 'Take off',
  blink: 'Blink',
  blinkNamed: (name: string) => `Blink ${name}`,
  takeOffNamed: (name: string) => `Take off ${name}`,
  swap: 'Swap chest and arm',
  /** For those who hear the page. */
  heard: (place: string, name: string, state: string) => `${place}: ${name}, ${state}.`,
  notConnected: 'not connected',
  rate: 'Rate',
  loss: 'Lost',
  last: 'Last packet',
  battery: 'Battery',
  signal: 'Signal',
  clock: 'Clock, steady to',
  spoilt: 'Spoilt packets',
  unknown: 'not known',
  ofHz: (hz: string, nominal: string) => `${hz} of ${nominal} Hz`,
  percent: (pct: string) => `${pct} %`,
  ago: (ms: string) => `${ms} ms ago`,
  longAgo: (s: string) => `${s} s ago`,
  dbm: (dbm: number, word: string) => `${word}, ${written(String(dbm))} dBm`,
  strength: ['very weak', 'weak', 'fair', 'good', 'strong'] as readonly string[],
  residual: (ms: string) => `${ms} ms`,
  advice: {
    rate: 'It is slower than it should be: bring it nearer to this computer.',
    loss: 'It loses readings: bring it nearer, away from other radios.',
    battery: 'Charge it before you practise.',
    signal: 'Its signal is weak: bring it nearer to this computer.',
    clock: 'Its clock is not certain yet: give it half a minute.',
    spoilt: 'Some of what it sent could not be read. If that goes on, switch it off and on.',
  },
  trace: (name: string, degPerS: string) =>
    `Movement of ${name} over the last 5 seconds, now ${degPerS} degrees a second`,
  noTrace: (name: string) => `Movement of ${name}: no readings now`,
  syncTitle: 'Do both clocks agree?',
  syncHelp:
    'Hold both sensors firmly together and tap them three times against your palm, about once a second. A sensor at 100 Hz on a slow link can be up to 10 ms off though its clock above looks steady: this shows it.',
  syncStart: 'Check with three taps',
  syncUnable: 'For this the chest and the trail arm sensor must be worn and streaming.',
  syncListening: 'Tap now, three times',
  syncLeft: (s: number) => `${s} s left`,
  syncDone: (ms: string, taps: number) =>
    `${taps} taps felt by both; their clocks differ by ${ms} ms.`,
  syncGood: 'Up to 5 ms is good enough.',
  syncBad:
    'More than 5 ms is too much: lay both near this computer, wait half a minute and check again. If it stays so, switch both off and on.',
};
