import type { Strings } from '../shape.ts';
import { names } from './core.ts';
import { count } from './numbers.ts';

export const today: Strings['today'] = {
  title: 'Heute',
  plan: (rehearsals, balls, hold) =>
    balls === 0
      ? `Nur Übungen. Halte oben ${hold}.`
      : `${count(rehearsals, 'Übung', 'Übungen')}, dann ${balls === 1 ? 'ein Ball' : `${balls} Bälle`}. Halte oben ${hold}.`,
  noHold: 'so lange du magst',
  start: 'Training beginnen',
  goOn: 'Mit dem Training weitermachen',
  demo: 'Der simulierten Person zusehen',
  hand: 'Du spielst',
  hands: { right: 'rechts', left: 'links' },
  sensors: 'Mit',
  sensorKinds: { demo: 'Demosensoren', bluetooth: 'eigenen Sensoren' },
  demoWhy: 'Demosensoren ersetzen echte: Eine simulierte Person folgt den Anweisungen.',
  ownWhy: 'Wähle und prüfe sie vorher auf der Seite „Sensoren“.',
  last: (when, repetitions) =>
    `Letztes Mal: ${when}, ${count(repetitions, 'Wiederholung', 'Wiederholungen')}.`,
  lastNote: 'Deine Notiz',
  firstTitle: 'Die Übung',
  needTitle: 'Was du brauchst',
  need: [
    'Zwei Bewegungssensoren: auf dem Brustbein und am {trail}en Oberarm',
    'Einen kurzen oder gepolsterten Schläger, 3 m freien Raum, weichen Boden',
    'Diesen Computer in Hörweite',
  ],
};

export const after: Strings['after'] = {
  title: 'Nach dem Training',
  closeTitle: 'Wie war es?',
  note: 'Eine Notiz fürs nächste Mal',
  noteHint: 'Was du gespürt hast, was gut ging',
  close: 'Speichern und abschließen',
  kept: 'Gespeichert.',
  noSummary: 'In diesem Training wurde nichts gemessen.',
  passed: (passed, scored) => `${passed} von ${scored} gelungen`,
  nothingScored: 'Keine Übung konnte gewertet werden',
  facts: (rehearsals, balls, minutes) => `${rehearsals}, ${balls} in ${minutes} min`,
  next: 'Nächstes Mal',
  byMeasure: 'Nach Messwert',
  median: 'Median',
  cue: 'Häufigster Hinweis',
  cueTimes: (times) => (times === 1 ? 'einmal' : `${times}-mal`),
  noCue: 'Keine Korrekturen nötig.',
  mix: 'Das Verhältnis',
  mixKept: (kept, balls) => `${kept} von ${count(balls, 'Ball', 'Bällen')} nach genug Übungen`,
  noBalls: 'Keine Bälle.',
  carryOver: 'Übertragung auf Bälle',
  carry: {
    addedFlexion: 'zusätzliche Beugung, Bälle im Vergleich zu Übungen',
    keptRotation: 'Armdrehung, Bälle im Vergleich zu Übungen',
  },
  tooLittle: 'nicht genug Daten',
  best: 'Beste',
  bestAndTypical: 'Beste und typische',
  typical: 'Typische',
  bestRule: names.rules.best,
  typicalRule: names.rules.typical,
  repetition: (index) => `Wiederholung ${index}`,
  moments: { address: 'Ansprechen', top: 'oben', end: 'Fangen' },
  notSeen: 'nicht erkannt',
  today: 'Zurück zu „Heute“',
  again: 'Neues Training beginnen',
};
