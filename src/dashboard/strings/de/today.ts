import type { Strings } from '../shape.ts';
import { names } from './core.ts';
import { count } from './numbers.ts';

export const today: Strings['today'] = {
  title: 'Heute',
  plan: (rehearsals, balls, hold) =>
    balls === 0
      ? `Nur Proben. Halte oben ${hold}.`
      : `${count(rehearsals, 'Probe', 'Proben')}, dann ${balls === 1 ? 'ein Ball' : `${balls} Bälle`}. Halte oben ${hold}.`,
  noHold: 'so lange du magst',
  start: 'Training beginnen',
  goOn: 'Mit dem Training weitermachen',
  demo: 'Der simulierten Person zusehen',
  hand: 'Du spielst',
  hands: { right: 'rechts', left: 'links' },
  sensors: 'Mit',
  sensorKinds: { demo: 'Demosensoren', bluetooth: 'eigenen Sensoren' },
  demoWhy: 'Demosensoren stehen für echte: Eine simulierte Person tut, worum du gebeten wirst.',
  ownWhy: 'Wähle und prüfe sie vorher auf der Seite „Sensoren“.',
  last: (when, repetitions) =>
    `Letztes Mal: ${when}, ${count(repetitions, 'Wiederholung', 'Wiederholungen')}.`,
  lastNote: 'Deine Notiz',
  firstTitle: 'Die Probe',
  first: [
    { word: 'Halten', text: 'Schwing nach oben und sei still.' },
    {
      word: 'Loslassen',
      text: 'Lass den Schläger los: Erst dreht und beugt sich die Brust nach unten, die Arme warten.',
    },
    {
      word: 'Fangen',
      text: 'Fang den fallenden Schläger, den hinteren Arm noch nach außen gedreht.',
    },
  ],
  needTitle: 'Was du brauchst',
  need: [
    'Zwei Bewegungssensoren: auf dem Brustbein und am hinteren Oberarm',
    'Einen kurzen oder gepolsterten Schläger, 3 m freien Raum, weichen Boden',
    'Diesen Computer dort, wo du ihn hörst',
  ],
};

export const after: Strings['after'] = {
  title: 'Nach dem Training',
  closeTitle: 'Wie war es?',
  note: 'Eine Notiz fürs nächste Mal',
  noteHint: 'Was du gespürt hast, was du behalten möchtest',
  close: 'Speichern und abschließen',
  kept: 'Gespeichert.',
  noSummary: 'In dieser Einheit wurde nichts gemessen.',
  passed: (passed, scored) => `${passed} von ${scored} gelungen`,
  nothingScored: 'Keine Probe konnte gewertet werden',
  facts: (rehearsals, balls, minutes) => `${rehearsals}, ${balls} in ${minutes} min`,
  next: 'Nächstes Mal',
  byMeasure: 'Nach Messwert',
  median: 'Median',
  cue: 'Am häufigsten gesagt',
  cueTimes: (times) => (times === 1 ? 'einmal' : `${times}-mal`),
  noCue: 'Es musste sich nichts ändern.',
  mix: 'Die Mischung',
  mixKept: (kept, balls) =>
    `${kept} von ${count(balls, 'Ball', 'Bällen')} zur rechten Zeit geschlagen`,
  noBalls: 'Es wurde kein Ball geschlagen.',
  carryOver: 'Übertragung auf Bälle',
  carry: {
    addedFlexion: 'zusätzliche Beugung, Bälle gegen Proben',
    keptRotation: 'Armdrehung, Bälle gegen Proben',
  },
  tooLittle: 'zu wenig, um etwas zu sagen',
  best: 'Beste',
  bestAndTypical: 'Beste und typische',
  typical: 'Typische',
  bestRule: names.rules.best,
  typicalRule: names.rules.typical,
  repetition: (index) => `Wiederholung ${index}`,
  moments: { address: 'Ansprechen', top: 'oben', end: 'Fangen' },
  notSeen: 'nicht gesehen',
  today: 'Zurück zu heute',
  again: 'Noch ein Training beginnen',
};
