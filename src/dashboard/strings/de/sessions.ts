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
  failed: 'Der Dienst hat nicht geantwortet. Was du getippt hast, steht noch hier.',
};

export const sessions: Strings['sessions'] = {
  title: 'Einheiten',
  loading: 'Deine Einheiten werden gesucht.',
  none: 'Noch ist nichts gespeichert. Jedes Training wird es, von der ersten Sekunde an.',
  folder: (path) => `Gespeichert auf diesem Computer in ${path}`,
  back: 'Alle Einheiten',
  date: (iso) => writing.dayAndTime(Date.parse(iso)),
  length: (s) => (s === null ? 'Länge nicht bekannt' : `${Math.max(1, Math.round(s / 60))} min`),
  hand: { left: 'linkshändig', right: 'rechtshändig' },
  states: {
    recording: 'wird gerade aufgenommen',
    complete: '',
    interrupted: 'unterbrochen: Alles, was geschrieben wurde, ist hier',
    unread: 'noch nicht gelesen',
  },
  simulated: 'simuliert',
  passed: (passed, scored) =>
    scored === 0
      ? 'keine Probe gewertet'
      : `${passed} von ${count(scored, 'Probe', 'Proben')} gelungen`,
  balls: (inMix, balls) =>
    balls === 0 ? 'keine Bälle' : `${count(balls, 'Ball', 'Bälle')}, ${inMix} in der Mischung`,
  warnings: (n) => count(n, 'Warnung', 'Warnungen'),
  open: 'Öffnen',
  import: 'Eine Einheit einlesen (.zip)',
  drop: 'Oder zieh Dateien von Einheiten irgendwo auf diese Seite. Eine Aufnahme von einem anderen Computer zum Beispiel, die per Mail kam.',
  dropNow: 'Loslassen zum Einlesen.',
  importing: 'Wird eingelesen und ausgewertet …',
  imported: (n) => (n === 1 ? 'Eingelesen.' : `${n} Einheiten eingelesen.`),
  refused: (name, why) => `${name} wurde nicht eingelesen: ${why}`,
  notZip: (name) =>
    `${name} wurde nicht eingelesen: Es ist kein .zip. Eine Einheit reist als eine .zip-Datei.`,
  emptyFile: (name) => `${name} wurde nicht eingelesen: Die Datei ist leer.`,
  tooLarge: (name, mb) => `${name} wurde nicht eingelesen: Die Datei ist größer als ${mb} MB.`,
  remove: 'Löschen',
  removed: (date) => `Die Einheit vom ${date} ist gelöscht.`,
  undo: 'Rückgängig',
  broughtBack: 'Sie ist wieder da.',
  notAnalysed: 'Diese Einheit ist noch nicht ausgewertet.',
  repetitions: 'Wiederholungen der Reihe nach',
  table: 'Jede Wiederholung',
  columns: { number: 'Nr.', kind: 'Art', at: 'Bei', verdict: 'Urteil' },
  at: (s) => `${Math.floor(s / 60)}:${String(Math.floor(s % 60)).padStart(2, '0')}`,
  exports: 'Zum Mitnehmen',
  print: 'Diese Seite drucken',
  formats: {
    zip: 'Aufnahme (.zip, Motion-BIDS)',
    csv: 'Wiederholungen (.csv)',
    angles: 'Winkelkurven (.csv)',
    sto: 'Orientierungen (.sto)',
  },
  basis:
    'Vorgaben sind Festlegungen fürs Training, keine veröffentlichte Norm. Am Menschen sind Neigung und Flexion auf etwa 4 Grad sicher, die Armdrehung auf 10 bis 15.',
  note: 'Notiz',
  pain: (before, after) =>
    `Schmerz vorher ${before ?? 'nicht gefragt'}, nachher ${after ?? 'nicht gefragt'}`,
  notTaken: 'nicht gemessen',
  missed: 'Vorgabe nicht erreicht',
};
