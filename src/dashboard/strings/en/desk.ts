import { localeWriting } from '../locale.ts';

const { written } = localeWriting('en-GB');

/** The sensors page. */
export const desk = {
  retryIn: (s: number) => (s > 0 ? ` in about ${s} s` : ' now'),
  title: 'Sensors',
  lead: 'Two sensors: one on the breastbone, one on the outside of the trail upper arm, just above the elbow.',
  opening: 'Loading …',
  none: 'Sensors are not available here.',
  demo: 'Everything else works without sensors: watch the simulated student or open a recording.',
  notUsed:
    'The current practice uses demo sensors. To practise with the sensors chosen here, start a practice with “my own sensors”.',
  toToday: 'Go to Today',
  notUsedReplay:
    'Stillcatch is playing a recording and does not use these sensors. To practise with them, start it with: npm start -- --sensors bluetooth',
  problem: 'No Bluetooth',
  mend: 'What to do',
  detail: (words: string) => `Details: ${words}`,
  searching:
    'Searching. Turn the sensors on and put them near this computer. Tap one to see which it is.',
  notSearching: 'Waiting for Bluetooth …',
  noSearch: 'Cannot search without Bluetooth.',
  recording:
    'Not searching during a practice, because that would disturb the connections. To search again, remove a sensor or end the practice.',
  places: 'Your sensors',
  remembered: 'This computer remembers them and reconnects automatically.',
  around: 'Nearby',
  nothingAround:
    'No other sensor found. A sensor that is connected elsewhere, for instance to a phone, does not show up.',
  place: {
    chest: () => 'On the breastbone',
    trailArm: (side: 'left' | 'right') => `Outside of the ${side} upper arm, just above the elbow`,
    club: () => 'Under the grip end; optional',
  },
  empty: 'No sensor yet',
  choose: 'Choose by tapping',
  chooseFor: (place: string) => `Choose by tapping: ${place.toLowerCase()}`,
  tapNow: 'Tap the sensor with a finger now',
  tapMissed: 'No clear tap on one sensor. Tap harder, or choose it under “Nearby”.',
  cancel: 'Cancel',
  unnamed: (end: string) => `Sensor without a name (${end})`,
  moving: 'this one is moving',
  wearOn: 'Wear on',
  wearGroup: (name: string) => `Where to wear ${name}`,
  wear: (place: string, name: string) => `Wear on ${place.toLowerCase()}: ${name}`,
  takeOff: 'Remove',
  blink: 'Blink',
  blinkNamed: (name: string) => `Blink ${name}`,
  takeOffNamed: (name: string) => `Remove ${name}`,
  swap: 'Swap chest and arm',
  /** For those who hear the page. */
  heard: (place: string, name: string, state: string) => `${place}: ${name}, ${state}.`,
  notConnected: 'not connected',
  rate: 'Rate',
  loss: 'Lost',
  last: 'Last packet',
  battery: 'Battery',
  signal: 'Signal',
  clock: 'Clock jitter',
  spoilt: 'Damaged packets',
  unknown: 'unknown',
  ofHz: (hz: string, nominal: string) => `${hz} of ${nominal} Hz`,
  percent: (pct: string) => `${pct} %`,
  ago: (ms: string) => `${ms} ms ago`,
  longAgo: (s: string) => `${s} s ago`,
  dbm: (dbm: number, word: string) => `${word}, ${written(String(dbm))} dBm`,
  strength: ['very weak', 'weak', 'fair', 'good', 'strong'] as readonly string[],
  residual: (ms: string) => `${ms} ms`,
  advice: {
    rate: 'Too slow. Move it closer to this computer.',
    loss: 'Losing data. Move it closer, away from other wireless devices.',
    battery: 'Low. Charge it before you practise.',
    signal: 'Weak signal. Move it closer to this computer.',
    clock: 'The clock is still settling. Wait half a minute.',
    spoilt: 'Some data could not be read. If this continues, turn the sensor off and on.',
  },
  trace: (name: string, degPerS: string) =>
    `Movement of ${name} over the last 5 seconds, now ${degPerS} degrees a second`,
  noTrace: (name: string) => `Movement of ${name}: no data now`,
  syncTitle: 'Check the clocks',
  syncHelp:
    'Hold both sensors firmly together and tap them three times against your palm, about once a second. A sensor at 100 Hz on a slow connection can be up to 10 ms off even if its clock looks steady. This check shows it.',
  syncStart: 'Check with three taps',
  syncUnable: 'The chest and trail arm sensors must both be connected first.',
  syncListening: 'Tap now, three times',
  syncLeft: (s: number) => `${s} s left`,
  syncDone: (ms: string, taps: number) =>
    `Both sensors felt ${taps} taps. Their clocks differ by ${ms} ms.`,
  syncGood: 'Up to 5 ms is good enough.',
  syncBad:
    'More than 5 ms is too much. Put both near this computer, wait half a minute and check again. If it does not improve, turn both off and on.',
};
