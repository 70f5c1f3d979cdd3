import type { HubStrings } from '../hubShape.ts';
import { day } from './hubShell.ts';
import { count } from './numbers.ts';

export const planChange: HubStrings['planChange'] = {
  title: (name) => `${name}: Plan`,
  start: 'Beginnen mit',
  now: (number) => `aktueller Plan (Version ${number})`,
  version: (number, fromMs) => `Version ${number}, ab ${day(fromMs)}`,
  template: (name) => `Vorlage: ${name}`,
  standard: 'Standardplan',
  from: 'Gültig ab',
  fromWhy: 'Frühere Trainings werden weiter nach ihrem damaligen Plan gewertet.',
  badDay: 'Wähle einen Tag.',
  what: 'Änderungen',
  nothing: 'Noch keine Änderungen.',
  invalid: 'Bitte korrigiere die markierten Felder.',
  save: 'Als neue Version speichern',
  reaches:
    'Der Computer des Spielers bekommt den Plan beim nächsten Kontakt und zeigt, was sich geändert hat.',
  keep: 'Als Vorlage speichern',
  keepName: 'Name der Vorlage',
  kept: (name) => `Als Vorlage ${name} gespeichert.`,
};

export const comparison: HubStrings['comparison'] = {
  title: (name) => `${name}: zwei Zeiträume vergleichen`,
  choose: 'Vergleichen',
  presets: {
    year: 'Diesen Monat mit demselben Monat vor einem Jahr',
    month: 'Die letzten 4 Wochen mit den 4 davor',
    quarter: 'Die letzten 3 Monate mit den 3 davor',
    own: 'Eigene Daten',
  },
  a: 'Früher',
  b: 'Später',
  from: 'von',
  to: 'bis einschließlich',
  stretch: (fromMs, toMs) =>
    day(fromMs) === day(toMs - 1) ? day(fromMs) : `${day(fromMs)} bis ${day(toMs - 1)}`,
  counted: (sessions, rehearsals, balls) =>
    `${count(sessions, 'Training', 'Trainings')}, ${count(rehearsals, 'Übung', 'Übungen')}, ${count(balls, 'Ball', 'Bälle')}`,
  empty: (which) => `${which}: keine Trainings.`,
  columns: {
    measure: 'Messwert',
    a: 'Früher',
    b: 'Später',
    overlay: 'Beide auf einer Achse',
    difference: 'Unterschied',
    reading: 'Bedeutung',
  },
  kinds: { rehearsals: 'Übungen', balls: 'Bälle' },
  value: (median, low, high) => `${median} (${low} bis ${high})`,
  of: (sessions, repetitions) =>
    `${count(sessions, 'Training', 'Trainings')}, ${count(repetitions, 'Wiederholung', 'Wiederholungen')}`,
  none: 'keine',
  interval: (value, low, high) => `${value} (${low} bis ${high})`,
  notBoth: 'nicht in beiden gemessen',
  tooFew: 'zu wenige Trainings (weniger als 3 in einem Zeitraum)',
  sure: 'klarer Unterschied: Der ganze wahrscheinliche Bereich liegt auf einer Seite von null',
  small: 'echt, aber kleiner als der Messfehler',
  unsure: 'kann Zufall sein: Der wahrscheinliche Bereich enthält die Null',
  note: 'Wert: ein übliches Training, das heißt der Mittelwert der Mediane der Trainings und der Enden ihrer mittleren Hälften. Unterschied: später minus früher, mit dem Bereich, der den wahren Unterschied in 95 von 100 Fällen enthält (Welch-Intervall der Mediane). Jedes Training zählt einmal, egal wie viele Wiederholungen es hatte, weil sich die Wiederholungen eines Trainings ähneln; bei weniger als 3 Trainings auf einer Seite gibt es keinen Bereich. Schattiert: Messfehler eines einzelnen Werts. Auf einer Achse: oben früher (Ring), unten später (Punkt), jeweils mit der mittleren Hälfte.',
  strap:
    'Ein Sensor, der an einer anderen Stelle sitzt, verschiebt alle Werte eines Trainings. Ein Unterschied von ein paar Grad zwischen Monaten kann davon kommen.',
  badDays: 'Wähle die Daten so, dass jeder Zeitraum nach seinem Beginn endet.',
};
