import type { Strings } from '../shape.ts';
import { count, writing } from './numbers.ts';

const sessions = (n: number): string => count(n, 'Einheit', 'Einheiten');

export const progress: Strings['progress'] = {
  title: 'Verlauf',
  loading: 'Deine Einheiten werden gesammelt.',
  range: 'Zeitraum',
  ranges: { all: 'Alles', threeMonths: '3 Monate', month: '1 Monat' },
  none: 'Noch ist keine Einheit ausgewertet. Nach dem ersten Training stehen ihre Messwerte hier.',
  noneInRange: 'Kein Training in diesem Zeitraum.',
  one: 'Eine Einheit ist noch kein Verlauf: Die Punkte zeigen, wo du bist, nicht wohin es geht.',
  few: (n) =>
    `${sessions(n)}: zu wenig, um einen Verlauf vom Zufall zu unterscheiden. Sieh nach ein paar weiteren wieder her.`,
  days: {
    title: 'Trainingstage',
    text: (days, of, n, repetitions) =>
      `An ${days} von ${count(of, 'Tag', 'Tagen')} geübt: ${sessions(n)}, ${count(repetitions, 'Wiederholung', 'Wiederholungen')} (Proben und Bälle).`,
    longest: (n) => (n === 0 ? '' : `Längste Pause: ${count(n, 'Tag', 'Tage')}.`),
    legend:
      'Quadrat: geübt, größer bei mehr Wiederholungen. Punkt: nicht geübt. Ring: mit einer Warnung.',
    weekdays: ['Mo', 'Di', 'Mi', 'Do', 'Fr', 'Sa', 'So'],
  },
  session: 'Einheit',
  open: 'Diese Einheit öffnen',
  date: (ms) => writing.day(ms),
  facts: (passed, scored) =>
    scored === 0
      ? 'keine Probe gewertet'
      : `${passed} von ${count(scored, 'Probe', 'Proben')} gelungen`,
  simulated: 'simuliert',
  warnings: (n) => count(n, 'Warnung', 'Warnungen'),
  pain: (before, after) => `Schmerz ${before} vorher, ${after} nachher`,
  notAsked: 'nicht gefragt',
  planChanged: 'Plan geändert:',
  change: {
    target: (name, before, after) => `${name}: ${before}, jetzt ${after}`,
    ratio: (before, after) => `Mischung ${before}, jetzt ${after}`,
    volume: (before, after) =>
      `Wiederholungen in Einheit und Woche, höchstens: ${before}, jetzt ${after}`,
    stage: (before, after) => `Stufe ${before}, jetzt ${after}`,
    other: () => 'Name, Notiz oder Checkliste',
  },
  noTarget: 'keine Vorgabe',
  marks: 'Außerdem markiert',
  legend: {
    title: 'So liest du es',
    rehearsals: 'Proben: Median einer Einheit',
    balls: 'Bälle: Median einer Einheit',
    quartiles: 'Balken: die mittlere Hälfte',
    open: 'Offen: weniger als drei Wiederholungen',
    band: 'Schattiert: die Vorgabe, wie der Plan sie damals hatte',
    plan: 'Raute: der Plan wurde geändert',
    warning: 'Pfosten unten: eine Warnung',
    mark: 'Gestrichelte Linie: eine Notiz zu einem Tag',
  },
  measures: 'Messwerte',
  series: { rehearsals: 'Proben', balls: 'Bälle', before: 'vorher', after: 'nachher' },
  at: (series, value, spread, n) =>
    `${series} ${value}${spread === '' ? '' : ` (${spread})`}${n === null ? '' : `, n ${n}`}`,
  notTaken: (series) => `${series} nicht gemessen`,
  chart: (name) => `${name} über die Einheiten; die Werte der gewählten Einheit stehen darüber`,
  sure: (text) => `Wie sicher ein Wert ist: ${text}.`,
  passed: 'Gelungene Proben',
  passedNote: 'Anteil der gewerteten Proben, die jede Vorgabe des damaligen Plans erreicht haben.',
  carryOver: 'Übertragung auf Bälle',
  carryOverNote:
    'Der Median der Bälle geteilt durch den der Proben. 100 %: dieselbe Bewegung. Die gehaltene Außendrehung ist meist ein Verlust: Mehr als 100 % heißt, dass die Bälle mehr verlieren. Weggelassen bei weniger als drei von einer Art, oder wo der Median der Proben nahe null ist.',
  carry: { addedFlexion: 'zusätzliche Beugung', keptRotation: 'gehaltene Außendrehung' },
  painTitle: 'Schmerz',
  painNote: 'Wie angegeben, 0 bis 10, vor und nach jeder Einheit.',
  painScale: 'von 10',
  nothing: 'In diesem Zeitraum nicht gemessen.',
  table: 'Als Tabelle',
  columns: { date: 'Datum' },
};
