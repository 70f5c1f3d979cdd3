import type { Strings } from '../shape.ts';
import { writing } from './numbers.ts';

export const desk: Strings['desk'] = {
  retryIn: (s) => (s > 0 ? ` in etwa ${s} s` : ' jetzt'),
  title: 'Sensoren',
  lead: 'Zwei Sensoren: einer auf dem Brustbein, einer außen am hinteren Oberarm, knapp über dem Ellbogen.',
  opening: 'Der Dienst wird nach seinen Sensoren gefragt …',
  none: 'Hinter dieser Seite steht kein Dienst für Sensoren.',
  demo: 'Alles andere geht auch ohne: Die simulierte Person und Aufnahmen brauchen keine Sensoren.',
  notUsed:
    'Das Training, das jetzt läuft, nutzt Demosensoren. Um mit den hier gewählten zu üben, beginne eines mit „eigenen Sensoren“.',
  toToday: 'Zu „Heute“',
  notUsedReplay:
    'Dieser Dienst spielt eine Aufnahme ab und nutzt diese Sensoren nicht. Um mit ihnen zu üben, starte ihn mit: npm start -- --sensors bluetooth',
  problem: 'Kein Bluetooth',
  mend: 'Was zu tun ist',
  detail: (words) => `Einzelheiten: ${words}`,
  searching:
    'Sucht. Schalte die Sensoren ein und leg sie in die Nähe dieses Computers. Tippe einen an, um zu sehen, welcher es ist.',
  notSearching: 'Wartet auf Bluetooth …',
  noSearch: 'Ohne Bluetooth lässt sich nichts suchen.',
  recording:
    'Ein Training mit den getragenen Sensoren läuft, deshalb wird nichts Neues gesucht: Es würde die Verbindungen stören. Um wieder zu suchen, nimm einen ab oder beende das Training.',
  places: 'Getragen',
  remembered: 'Dieser Computer merkt sie sich und verbindet sie von selbst wieder.',
  around: 'In der Nähe',
  nothingAround:
    'Kein weiterer Sensor zu hören. Einer, der anderswo verbunden ist, etwa mit einem Telefon, ist nicht zu hören.',
  place: {
    chest: () => 'Auf dem Brustbein',
    trailArm: (side) =>
      `Außen am ${side === 'left' ? 'linken' : 'rechten'} Oberarm, knapp über dem Ellbogen`,
    club: () => 'Unter dem Griffende; freiwillig',
  },
  empty: 'Noch kein Sensor',
  choose: 'Durch Antippen wählen',
  chooseFor: (place) => `Durch Antippen wählen: ${place}`,
  tapNow: 'Tippe jetzt mit einem Finger an den Sensor',
  tapMissed:
    'Es war kein Tippen zu spüren, das klar von einem Sensor kam. Tippe kräftiger, oder wähle ihn unter „In der Nähe“.',
  cancel: 'Abbrechen',
  unnamed: (end) => `Sensor ohne Namen (${end})`,
  moving: 'dieser bewegt sich',
  wearOn: 'Tragen an',
  wearGroup: (name) => `Wo ${name} getragen wird`,
  wear: (place, name) => `${name} tragen an: ${place}`,
  takeOff: 'Abnehmen',
  blink: 'Blinken',
  blinkNamed: (name) => `${name} blinken lassen`,
  takeOffNamed: (name) => `${name} abnehmen`,
  swap: 'Brust und Arm tauschen',
  heard: (place, name, state) => `${place}: ${name}, ${state}.`,
  notConnected: 'nicht verbunden',
  rate: 'Rate',
  loss: 'Verloren',
  last: 'Letztes Paket',
  battery: 'Akku',
  signal: 'Signal',
  clock: 'Uhr gleichmäßig auf',
  spoilt: 'Verdorbene Pakete',
  unknown: 'nicht bekannt',
  ofHz: (hz, nominal) => `${hz} von ${nominal} Hz`,
  percent: (pct) => `${pct} %`,
  ago: (ms) => `vor ${ms} ms`,
  longAgo: (s) => `vor ${s} s`,
  dbm: (dbm, word) => `${word}, ${writing.written(String(dbm))} dBm`,
  strength: ['minimal', 'schwach', 'mäßig', 'gut', 'stark'],
  residual: (ms) => `${ms} ms`,
  advice: {
    rate: 'Er ist langsamer, als er sein sollte: Bring ihn näher an diesen Computer.',
    loss: 'Er verliert Messwerte: Bring ihn näher, weg von anderen Funkgeräten.',
    battery: 'Lade ihn, bevor du übst.',
    signal: 'Sein Signal ist schwach: Bring ihn näher an diesen Computer.',
    clock: 'Seine Uhr ist noch nicht sicher: Gib ihm eine halbe Minute.',
    spoilt:
      'Einiges von ihm war nicht zu lesen. Wenn das so weitergeht, schalte ihn aus und wieder ein.',
  },
  trace: (name, degPerS) =>
    `Bewegung von ${name} in den letzten 5 Sekunden, jetzt ${degPerS} Grad pro Sekunde`,
  noTrace: (name) => `Bewegung von ${name}: gerade keine Messwerte`,
  syncTitle: 'Gehen beide Uhren gleich?',
  syncHelp:
    'Halt beide Sensoren fest zusammen und klopf sie dreimal gegen deine Handfläche, etwa einmal pro Sekunde. Ein Sensor mit 100 Hz an einer langsamen Verbindung kann bis zu 10 ms danebenliegen, auch wenn seine Uhr oben gleichmäßig aussieht: Das hier zeigt es.',
  syncStart: 'Mit dreimal Klopfen prüfen',
  syncUnable: 'Dazu müssen der Brust- und der Armsensor getragen werden und senden.',
  syncListening: 'Klopf jetzt dreimal',
  syncLeft: (s) => `noch ${s} s`,
  syncDone: (ms, taps) =>
    `${taps} Schläge bei beiden gespürt; ihre Uhren unterscheiden sich um ${ms} ms.`,
  syncGood: 'Bis 5 ms ist gut genug.',
  syncBad:
    'Mehr als 5 ms ist zu viel: Leg beide nah an diesen Computer, warte eine halbe Minute und prüfe noch einmal. Bleibt es dabei, schalte beide aus und wieder ein.',
};
