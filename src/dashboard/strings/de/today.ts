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
    repetitions === 0
      ? `Letztes Mal: ${when}, vor der ersten Wiederholung beendet.`
      : `Letztes Mal: ${when}, ${count(repetitions, 'Wiederholung', 'Wiederholungen')}.`,
  lastState: {
    recording: (when) => `Letztes Mal: ${when}, wird gerade aufgenommen.`,
    analysing: (when) => `Letztes Mal: ${when}. Das Training wird ausgewertet.`,
    failed: (when) => `Letztes Mal: ${when}. Das Training konnte nicht ausgewertet werden:`,
  },
  since: {
    title: 'Seit dem letzten Mal',
    first: 'Nach deinem nächsten Training siehst du hier, was sich geändert hat.',
    'too-few': 'Zu wenige Übungen für einen Vergleich.',
    same: 'Etwa wie beim letzten Mal: Kein Messwert hat sich um mehr als seine Unsicherheit geändert.',
    changed: (name, now, before, difference, sure) =>
      `${name} ${now}, davor ${before} (${difference} ${sure})`,
    toward: {
      reached: 'jetzt im Ziel',
      nearer: 'näher am Ziel',
      farther: 'weiter vom Ziel entfernt',
      left: 'nicht mehr im Ziel',
    },
    of: (now, before) => `Mediane von ${now} und ${before} Übungen.`,
    focus: 'Heute im Blick',
    again: (cue, times, of) => `${cue} Nötig bei ${times} von ${of} Übungen beim letzten Mal.`,
    painFirst: 'Der Schmerz geht vor: Folge dem Rat vom letzten Training, bevor du wieder übst.',
    fewer: 'Mach weniger Wiederholungen als beim letzten Mal.',
  },
  proposal: {
    title: 'Nächster Schritt',
    some: (met, asked, times) =>
      `${met} von ${count(asked, 'Zielwert', 'Zielwerten')} in ${times} Trainings in Folge erreicht.`,
    all: (times) => `Alle Zielwerte in ${times} Trainings in Folge erreicht.`,
    target: (name, target) => `Arbeite jetzt an: ${name}, ${target}.`,
    stage: (name) => `Du kannst zur Stufe „${name}“ weitergehen.`,
    done: 'Das ist die letzte Stufe des Plans: Zeit für neue Zielwerte.',
    askCoach: 'Frag deinen Coach danach.',
    change: 'Plan ändern',
  },
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
