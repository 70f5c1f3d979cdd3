import type { Strings } from '../shape.ts';
import { count, writing } from './numbers.ts';

export const sessionNotes: Strings['sessionNotes'] = {
  title: 'Notiz und Schmerz',
  painBefore: 'Schmerz vorher',
  painAfter: 'Schmerz nachher',
  notAsked: 'nicht gefragt',
  note: 'Notiz',
  keep: 'Speichern',
  kept: 'Gespeichert.',
  failed: 'Nicht gespeichert: keine Antwort von Stillcatch. Dein Text ist noch hier.',
};

export const sessions: Strings['sessions'] = {
  title: 'Trainings',
  loading: 'Deine Trainings werden geladen …',
  none: 'Noch keine Trainings. Jedes Training wird automatisch gespeichert.',
  folder: (path) => `Gespeichert auf diesem Computer in ${path}`,
  back: 'Alle Trainings',
  date: (iso) => writing.dayAndTime(Date.parse(iso)),
  length: (s) => (s === null ? 'Länge unbekannt' : `${Math.max(1, Math.round(s / 60))} min`),
  hand: { left: 'linkshändig', right: 'rechtshändig' },
  interrupted: 'unterbrochen: Alles bis dahin ist gespeichert',
  simulated: 'simuliert',
  notCounted: 'simuliert: zählt nicht als Training',
  passed: (passed, scored) =>
    scored === 0
      ? 'keine Übung gewertet'
      : `${passed} von ${count(scored, 'Übung', 'Übungen')} gelungen`,
  balls: (inMix, balls) =>
    balls === 0 ? 'keine Bälle' : `${count(balls, 'Ball', 'Bälle')}, ${inMix} im Verhältnis`,
  warnings: (n) => count(n, 'Warnung', 'Warnungen'),
  open: 'Öffnen',
  import: 'Training importieren (.zip)',
  drop: 'Oder zieh Trainingsdateien irgendwo auf diese Seite, zum Beispiel eine Aufnahme, die per Mail kam.',
  dropNow: 'Loslassen zum Importieren.',
  importing: 'Wird importiert und ausgewertet …',
  imported: (n) => (n === 1 ? 'Importiert.' : `${n} Trainings importiert.`),
  refused: (name, why) => `${name} wurde nicht importiert: ${why}`,
  notZip: (name) => `${name} wurde nicht importiert: Es ist keine .zip-Datei.`,
  emptyFile: (name) => `${name} wurde nicht importiert: Die Datei ist leer.`,
  tooLarge: (name, mb) => `${name} wurde nicht importiert: Die Datei ist größer als ${mb} MB.`,
  remove: 'Löschen',
  removed: (date) => `Training vom ${date} gelöscht.`,
  undo: 'Rückgängig',
  broughtBack: 'Training wiederhergestellt.',
  notAnalysed: 'Dieses Training ist noch nicht ausgewertet.',
  repetitions: 'Wiederholungen der Reihe nach',
  table: 'Alle Wiederholungen',
  columns: { number: 'Nr.', kind: 'Art', at: 'Zeit', verdict: 'Ergebnis' },
  at: (s) => `${Math.floor(s / 60)}:${String(Math.floor(s % 60)).padStart(2, '0')}`,
  exports: 'Exportieren',
  print: 'Diese Seite drucken',
  formats: {
    zip: 'Aufnahme (.zip, Motion-BIDS)',
    csv: 'Wiederholungen (.csv)',
    angles: 'Winkelkurven (.csv)',
    sto: 'Orientierungen (.sto)',
  },
  basis:
    'Zielwerte sind Festlegungen fürs Training, keine veröffentlichten Normen. Genauigkeit am Menschen: Neigung und Flexion etwa 4 Grad, Armdrehung 10 bis 15.',
  note: 'Notiz',
  edited: (ms) => `geändert am ${writing.dayAndTime(ms)}`,
  pain: (before, after) =>
    `Schmerz vorher ${before ?? 'nicht gefragt'}, nachher ${after ?? 'nicht gefragt'}`,
  notTaken: 'nicht gemessen',
  missed: 'außerhalb des Zielbereichs',
};
