import type { Strings } from '../shape.ts';
import { writing } from './numbers.ts';

export const desk: Strings['desk'] = {
  retryIn: (s) => (s > 0 ? ` in etwa ${s} s` : ' jetzt'),
  title: 'Sensoren',
  lead: 'Zwei Sensoren: einer auf dem Brustbein, einer außen am Oberarm (rechtshändig: rechts, linkshändig: links), knapp über dem Ellbogen.',
  opening: 'Wird geladen …',
  none: 'Sensoren sind hier nicht verfügbar.',
  demo: 'Alles andere geht auch ohne Sensoren: Sieh der simulierten Person zu oder öffne eine Aufnahme.',
  notUsed:
    'Das laufende Training nutzt Demosensoren. Um mit den hier gewählten Sensoren zu üben, beginne ein Training mit „eigenen Sensoren“.',
  toToday: 'Zu „Heute“',
  notUsedReplay:
    'Stillcatch spielt eine Aufnahme ab und nutzt diese Sensoren nicht. Um mit ihnen zu üben, starte es mit: npm start -- --sensors bluetooth',
  problem: 'Kein Bluetooth',
  mend: 'Was du tun kannst',
  detail: (words) => `Einzelheiten: ${words}`,
  searching:
    'Suche läuft. Schalte die Sensoren ein und leg sie in die Nähe dieses Computers. Tippe einen an, um zu sehen, welcher es ist.',
  notSearching: 'Warten auf Bluetooth …',
  noSearch: 'Ohne Bluetooth ist keine Suche möglich.',
  recording:
    'Während eines Trainings wird nicht gesucht, weil das die Verbindungen stört. Um wieder zu suchen, entferne einen Sensor oder beende das Training.',
  places: 'Deine Sensoren',
  remembered: 'Dieser Computer merkt sie sich und verbindet sie automatisch wieder.',
  around: 'In der Nähe',
  nothingAround:
    'Kein weiterer Sensor gefunden. Ein Sensor, der anderswo verbunden ist, etwa mit einem Handy, erscheint hier nicht.',
  place: {
    chest: () => 'Auf dem Brustbein',
    trailArm: (side) =>
      `Außen am ${side === 'left' ? 'linken' : 'rechten'} Oberarm, knapp über dem Ellbogen`,
    club: () => 'Unter dem Griffende; optional',
  },
  empty: 'Noch kein Sensor',
  choose: 'Durch Antippen wählen',
  chooseFor: (place) => `Durch Antippen wählen: ${place}`,
  tapNow: 'Tippe jetzt mit einem Finger an den Sensor',
  tapMissed:
    'Kein klares Tippen auf einen Sensor. Tippe kräftiger, oder wähle ihn unter „In der Nähe“.',
  cancel: 'Abbrechen',
  unnamed: (end) => `Sensor ohne Namen (${end})`,
  moving: 'dieser bewegt sich',
  wearOn: 'Tragen an',
  wearGroup: (name) => `Wo ${name} getragen wird`,
  wear: (place, name) => `${name} tragen an: ${place}`,
  takeOff: 'Entfernen',
  blink: 'Blinken',
  blinkNamed: (name) => `${name} blinken lassen`,
  takeOffNamed: (name) => `${name} entfernen`,
  swap: 'Brust und Arm tauschen',
  heard: (place, name, state) => `${place}: ${name}, ${state}.`,
  notConnected: 'nicht verbunden',
  rate: 'Rate',
  loss: 'Verloren',
  last: 'Letztes Paket',
  battery: 'Akku',
  signal: 'Signal',
  clock: 'Schwankung der Uhr',
  spoilt: 'Beschädigte Pakete',
  unknown: 'unbekannt',
  ofHz: (hz, nominal) => `${hz} von ${nominal} Hz`,
  percent: (pct) => `${pct} %`,
  ago: (ms) => `vor ${ms} ms`,
  longAgo: (s) => `vor ${s} s`,
  dbm: (dbm, word) => `${word}, ${writing.written(String(dbm))} dBm`,
  strength: ['minimal', 'schwach', 'mäßig', 'gut', 'stark'],
  residual: (ms) => `${ms} ms`,
  advice: {
    rate: 'Zu langsam. Bring ihn näher an diesen Computer.',
    loss: 'Verliert Daten. Bring ihn näher, weg von anderen Funkgeräten.',
    battery: 'Fast leer. Lade ihn vor dem Training.',
    signal: 'Schwaches Signal. Bring ihn näher an diesen Computer.',
    clock: 'Die Uhr muss sich noch einpendeln. Warte eine halbe Minute.',
    spoilt: 'Einige Daten waren nicht lesbar. Wenn das so bleibt, schalte ihn aus und wieder ein.',
  },
  trace: (name, degPerS) =>
    `Bewegung von ${name} in den letzten 5 Sekunden, jetzt ${degPerS} Grad pro Sekunde`,
  noTrace: (name) => `Bewegung von ${name}: gerade keine Daten`,
  syncTitle: 'Uhren prüfen',
  syncHelp:
    'Halt beide Sensoren fest zusammen und klopf sie dreimal gegen deine Handfläche, etwa einmal pro Sekunde. Ein Sensor mit 100 Hz an einer langsamen Verbindung kann bis zu 10 ms danebenliegen, auch wenn seine Uhr gleichmäßig aussieht. Diese Prüfung zeigt es.',
  syncStart: 'Mit dreimal Klopfen prüfen',
  syncUnable: 'Dazu müssen Brust- und Armsensor verbunden sein.',
  syncListening: 'Klopf jetzt dreimal',
  syncLeft: (s) => `noch ${s} s`,
  syncDone: (ms, taps) =>
    `Beide Sensoren haben ${taps} Klopfer gespürt. Ihre Uhren unterscheiden sich um ${ms} ms.`,
  syncGood: 'Bis 5 ms ist gut genug.',
  syncBad:
    'Mehr als 5 ms ist zu viel. Leg beide nah an diesen Computer, warte eine halbe Minute und prüfe noch einmal. Wird es nicht besser, schalte beide aus und wieder ein.',
};
