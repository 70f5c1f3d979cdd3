import type { HubStrings } from '../hubShape.ts';
import { day } from './hubShell.ts';
import { count, writing } from './numbers.ts';

const month = (ms: number): string =>
  new Date(ms).toLocaleDateString(writing.tag, { month: 'long', year: 'numeric' });

export const report: HubStrings['report'] = {
  title: (name) => `Bericht: ${name}`,
  settings: 'Inhalt des Berichts',
  range: 'Monate',
  ranges: [
    [1, 'dieser Monat'],
    [3, 'die letzten 3 Monate'],
    [6, 'die letzten 6 Monate'],
    [12, 'die letzten 12 Monate'],
  ],
  words: 'Nachricht',
  comments: 'Kommentare zum Drucken',
  noComments: 'Keine Kommentare in diesen Monaten.',
  print: 'Drucken oder als PDF speichern',
  paper: 'Passt auf A4 und Letter. Wähle das Papier im Druckfenster.',
  back: 'Zurück zum Spieler',

  head: (club) => `${club} · Trainingsbericht`,
  about: (coach, fromMs, toMs, printedMs) =>
    `Coach ${coach} · ${day(fromMs)} bis ${day(toMs)} · gedruckt ${day(printedMs)}`,
  simulated: 'Einige dieser Trainings sind simuliert.',
  toYou: 'Von deinem Coach',
  practice: 'Training Monat für Monat',
  columns: {
    month: 'Monat',
    days: 'Trainingstage',
    sessions: 'Trainings',
    rehearsals: 'Übungen',
    passed: 'Gelungen',
    balls: 'Bälle',
    mix: 'Im Verhältnis',
    warnings: 'Warnungen',
  },
  month,
  share: (part, of) =>
    of === 0 ? '–' : `${part} von ${of} (${Math.round((100 * part) / of)}\u00a0%)`,
  none: 'Keine Trainings in diesen Monaten.',
  measures: 'Messwerte im Verlauf',
  legend: {
    title: 'Was gezeichnet ist',
    rehearsals: 'Übungen: Median eines Trainings',
    balls: 'Bälle: Median eines Trainings',
    half: 'mittlere Hälfte des Trainings',
    target: 'Zielwert des aktuellen Plans',
    change: 'Plan geändert',
    lesson: 'Trainerstunde',
  },
  few: (n) => `Nur ${count(n, 'Training', 'Trainings')}: zu wenige für einen Trend.`,
  carryOver: 'Übertragung',
  carryOverIs:
    'Übertragung: Median der Bälle geteilt durch den Median der Übungen, aus dem neuesten Training, das es erlaubt. 1 ist dieselbe Bewegung, 0 nichts davon. Der Arm verliert meist Außendrehung; mehr als 1 heißt dort, dass die Bälle mehr verlieren.',
  carry: (name, value, ms) => `${name}: ${value} (${day(ms)})`,
  carryNone: 'Kein Training hatte mindestens drei brauchbare Übungen und drei brauchbare Bälle.',
  addedFlexion: 'Beugung über Drehung hinaus',
  keptRotation: 'Arm nach außen gedreht geblieben',
  plan: 'Plan',
  planColumns: { measure: 'Messwert', target: 'Zielwert', last: 'Deine letzten Werte' },
  last: (median, n) => `${median} (n ${n})`,
  notTaken: 'nicht gemessen',
  checklist: 'Checkliste',
  changes: 'Planänderungen',
  lessons: 'Trainerstunden',
  said: 'Kommentare',
  saidBy: (by, ms, where) => `${by}, ${day(ms)}, ${where}`,
  accuracy: 'Genauigkeit dieser Zahlen',
  accuracyLine: (name, text, source) => `${name}: ${text} (${source}).`,
  cautions: 'Sicherheitshinweise',
  cautionLines: [
    'Hör bei Schmerz auf. Bei 4 oder 5 von 10, oder 2 mehr als am Anfang: Hör für heute auf; ist er morgen noch da, geh in eine Arztpraxis oder zur Physiotherapie.',
    'Vor jedem Training müssen 3 m um dich herum frei sein. Keine Kinder, Tiere oder Zuschauer.',
    'Das Programm kann dir keinen sicheren Winkel und keine Belastung deines Rückens nennen, stellt keine Diagnose und verhindert keine Verletzung.',
  ],
};
