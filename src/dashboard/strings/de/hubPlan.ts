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
  clash: {
    title: 'Dieser Plan wurde inzwischen geändert',
    what: (by, number, at) =>
      `${by === '' ? 'Jemand' : by} hat Version ${number} am ${at} gespeichert, nachdem du begonnen hattest. Deine Änderungen sind noch nicht gespeichert: Wähle für jedes Feld.`,
    columns: { what: 'Feld', before: 'Vorher', theirs: 'Inzwischen gespeichert', mine: 'Deine' },
    unchanged: '(wie vorher)',
    empty: '(leer)',
    same: 'Beide sagen dasselbe: Es gibt nichts mehr zu speichern.',
    allTheirs: 'Alles von dort übernehmen',
    allMine: 'Alles von mir übernehmen',
    open: (n) =>
      n === 1
        ? 'Beide haben 1 Feld geändert: Wähle eines.'
        : `Beide haben ${n} Felder geändert: Wähle für jedes.`,
    save: (number) => `Als Version ${number} speichern`,
    keepTheirs: (number) => `Version ${number} behalten, meine verwerfen`,
    back: 'Zurück zu meinem Entwurf',
  },
};

export const comparison: HubStrings['comparison'] = {
  title: (name) => `${name}: zwei Zeiträume vergleichen`,
  choose: 'Vergleichen',
  presets: {
    weeks: 'die letzten 4 Wochen mit den 4 Wochen davor',
    year: 'die letzten 4 Wochen mit denselben Wochen vor einem Jahr',
    quarter: 'die letzten 12 Wochen mit den 12 Wochen davor',
    own: 'eigene Daten',
  },
  a: 'Früher',
  b: 'Später',
  from: 'von',
  to: 'bis einschließlich',
  asLong: 'Beide gleich lang',
  period: (fromMs, toMs) =>
    day(fromMs) === day(toMs - 1) ? day(fromMs) : `${day(fromMs)} bis ${day(toMs - 1)}`,
  counted: (sessions, rehearsals, balls) =>
    `${count(sessions, 'Training', 'Trainings')}, ${count(rehearsals, 'Übung', 'Übungen')}, ${count(balls, 'Ball', 'Bälle')}`,
  empty: (which) => `${which}: keine Trainings.`,
  noneCounted: (which) => `${which}: kein Training, das zählt.`,
  uneven: {
    days: (a, b) =>
      `Die Zeiträume sind nicht gleich lang: früher ${count(a, 'Tag', 'Tage')}, später ${count(b, 'Tag', 'Tage')}.`,
    sessions: (a, b) =>
      `Ein Zeitraum hat viel weniger Trainings (früher ${a}, später ${b}): Sein übliches Training ist unsicherer.`,
    overlap: 'Die Zeiträume überschneiden sich: Gemeinsame Trainings zählen auf beiden Seiten.',
    plans: (a, b) =>
      `Der Plan hat sich geändert (früher Version ${a}, später ${b}): Der Anteil Gelungener richtet sich nach dem Plan des jeweiligen Tages.`,
    noPlan: 'keine',
  },
  columns: {
    measure: 'Messwert',
    difference: 'Unterschied (später minus früher)',
    reading: 'Bedeutung',
    a: 'Früher',
    b: 'Später',
    overlay: 'Beide auf einer Achse',
  },
  kinds: {
    passed: 'Gelungen',
    rehearsals: 'Übungen',
    balls: 'Bälle',
    carryOver: 'Übertragung',
  },
  all: 'alle Zielwerte zusammen',
  percent: (text) => `${text}\u00a0%`,
  points: (text) => `${text} Punkte`,
  value: (median, low, high) => `${median} (${low} bis ${high})`,
  of: (sessions, repetitions) =>
    `${count(sessions, 'Training', 'Trainings')}, ${count(repetitions, 'Wiederholung', 'Wiederholungen')}`,
  none: 'keine',
  ofSessions: (sessions) => count(sessions, 'Training', 'Trainings'),
  interval: (low, high) => `wahrscheinlich ${low} bis ${high}`,
  notBoth: 'nur in einem Zeitraum',
  tooFew: 'zu wenige Trainings für eine Aussage',
  sure: 'klarer Unterschied',
  small: 'echt, aber kleiner als der Messfehler',
  unsure: 'kein klarer Unterschied',
  together: (n) =>
    n === 1
      ? 'Der Bereich enthält den wahren Unterschied in 95 von 100 Fällen.'
      : `Hier stehen ${n} Unterschiede zusammen, und bei so vielen sähe oft einer durch Zufall klar aus. Deshalb ist jeder Bereich breiter: Alle ${n} enthalten die wahren Unterschiede gleichzeitig in mindestens 95 von 100 Fällen.`,
  noneTogether: 'Ein Bereich ist erst ab 3 Trainings in jedem Zeitraum möglich.',
  howTitle: 'So wird gerechnet',
  note: 'Jedes Training zählt einmal, egal wie viele Wiederholungen es hatte, weil sich die Wiederholungen eines Trainings ähneln. Ein übliches Training ist der Mittelwert der Mediane der Trainings und der Enden ihrer mittleren Hälften; beim Anteil Gelungener und bei der Übertragung der Mittelwert und die mittlere Hälfte der Trainings. Der Bereich ist das Welch-Intervall für den Unterschied zweier Mittelwerte, verbreitert nach der Zahl der Unterschiede (Bonferroni). Schattiert: Messfehler eines einzelnen Werts. Auf einer Achse: oben früher (Ring), unten später (Punkt), jeweils mit der mittleren Hälfte.',
  strap:
    'Ein Sensor, der an einer anderen Stelle sitzt, verschiebt alle Werte eines Trainings. Ein Unterschied von ein paar Grad zwischen Monaten kann davon kommen.',
  badDays: 'Wähle die Daten so, dass jeder Zeitraum nach seinem Beginn endet.',
};
