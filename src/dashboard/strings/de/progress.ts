import type { Strings } from '../shape.ts';
import { count, writing } from './numbers.ts';

const sessions = (n: number): string => count(n, 'Training', 'Trainings');

export const progress: Strings['progress'] = {
  title: 'Verlauf',
  loading: 'Deine Trainings werden geladen …',
  range: 'Zeitraum',
  ranges: { all: 'Alles', threeMonths: '3 Monate', month: '1 Monat' },
  none: 'Noch keine Trainings. Nach dem ersten Training erscheinen hier deine Messwerte.',
  noneInRange: 'Kein Training in diesem Zeitraum.',
  one: 'Ein Training zeigt, wo du bist, aber noch nicht, wohin es geht.',
  few: (n) => `${sessions(n)}: zu wenige für einen Trend. Sieh nach ein paar weiteren wieder nach.`,
  days: {
    title: 'Trainingstage',
    text: (days, of, n, repetitions) =>
      `An ${days} von ${count(of, 'Tag', 'Tagen')} geübt: ${sessions(n)}, ${count(repetitions, 'Wiederholung', 'Wiederholungen')} (Übungen und Bälle).`,
    longest: (n) => (n === 0 ? '' : `Längste Pause: ${count(n, 'Tag', 'Tage')}.`),
    legend: 'Quadrat: geübt (größer: mehr Wiederholungen). Punkt: nicht geübt. Ring: mit Warnung.',
    weekdays: ['Mo', 'Di', 'Mi', 'Do', 'Fr', 'Sa', 'So'],
  },
  session: 'Training',
  open: 'Dieses Training öffnen',
  date: (ms) => writing.day(ms),
  facts: (passed, scored) =>
    scored === 0
      ? 'keine Übung gewertet'
      : `${passed} von ${count(scored, 'Übung', 'Übungen')} gelungen`,
  simulated: 'simuliert',
  warnings: (n) => count(n, 'Warnung', 'Warnungen'),
  pain: (before, after) => `Schmerz ${before} vorher, ${after} nachher`,
  notAsked: 'nicht gefragt',
  planChanged: 'Plan geändert:',
  change: {
    target: (name, before, after) => `${name}: ${before}, jetzt ${after}`,
    ratio: (before, after) => `Verhältnis ${before}, jetzt ${after}`,
    volume: (before, after) =>
      `Höchstzahl Wiederholungen pro Training und Woche: ${before}, jetzt ${after}`,
    stage: (before, after) => `Stufe ${before}, jetzt ${after}`,
    other: () => 'Name, Notiz oder Checkliste',
  },
  noTarget: 'kein Zielwert',
  marks: 'Außerdem an diesem Tag',
  legend: {
    title: 'So liest du die Diagramme',
    rehearsals: 'Übungen: Median des Trainings',
    balls: 'Bälle: Median des Trainings',
    quartiles: 'Balken: die Hälfte der Werte',
    open: 'Offen: weniger als drei Wiederholungen',
    band: 'Schattiert: der damalige Zielwert',
    plan: 'Raute: Plan geändert',
    warning: 'Balken unten: Warnung',
    mark: 'Gestrichelte Linie: Notiz zu einem Tag',
  },
  measures: 'Messwerte',
  series: { rehearsals: 'Übungen', balls: 'Bälle', before: 'vorher', after: 'nachher' },
  at: (series, value, spread, n) =>
    `${series} ${value}${spread === '' ? '' : ` (${spread})`}${n === null ? '' : `; ${count(n, 'Wiederholung', 'Wiederholungen')}`}`,
  notTaken: (series) => `${series} nicht gemessen`,
  chart: (name) => `${name} über die Trainings. Die Werte des gewählten Trainings stehen darüber.`,
  sure: (text) => `Genauigkeit eines Werts: ${text}.`,
  passed: 'Gelungene Übungen',
  passedNote:
    'Anteil der gewerteten Übungen, die alle Zielwerte des damaligen Plans erreicht haben.',
  carryOver: 'Übertragung auf Bälle',
  carryOverNote:
    'Der Median der Bälle geteilt durch den der Übungen. 100 %: dieselbe Bewegung. Der Arm verliert meist Außendrehung; mehr als 100 % heißt dort, dass die Bälle mehr verlieren. Nicht angezeigt bei weniger als drei Übungen oder Bällen, oder wenn der Median der Übungen nahe null ist.',
  carry: { addedFlexion: 'zusätzliche Beugung', keptRotation: 'gehaltene Außendrehung' },
  painTitle: 'Schmerz',
  painNote: 'Deine Angaben von 0 bis 10, vor und nach jedem Training.',
  painScale: 'von 10',
  nothing: 'In diesem Zeitraum nicht gemessen.',
  table: 'Als Tabelle',
  columns: { date: 'Datum' },
};
