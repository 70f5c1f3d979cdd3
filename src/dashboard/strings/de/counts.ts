import { NOT_COUNTED, type NotCounted, standingOf } from '../../../coaching/notCounted.ts';
import type { Strings } from '../shape.ts';
import { count } from './numbers.ts';

const WHY: Readonly<Record<NotCounted, (n: number) => string>> = {
  recording: () => 'Ein Training wird gerade aufgenommen.',
  analysing: (n) =>
    n === 1
      ? '1 Training wird noch ausgewertet und zählt noch nicht mit.'
      : `${n} Trainings werden noch ausgewertet und zählen noch nicht mit.`,
  failed: (n) =>
    n === 1
      ? '1 Training konnte nicht ausgewertet werden und zählt nicht mit.'
      : `${n} Trainings konnten nicht ausgewertet werden und zählen nicht mit.`,
  simulated: (n) =>
    n === 1
      ? '1 simuliertes Training zählt nicht mit: Niemand hat es geübt.'
      : `${n} simulierte Trainings zählen nicht mit: Niemand hat sie geübt.`,
};

export const counts: Strings['counts'] = {
  notCounted: (counts) =>
    NOT_COUNTED.flatMap((why) => (counts[why] > 0 ? [WHY[why](counts[why])] : [])),
  week: (week, limit) =>
    standingOf(week) === 'unknown'
      ? `Diese Woche: noch nicht gezählt, höchstens ${count(limit, 'Wiederholung', 'Wiederholungen')}.`
      : `Diese Woche: ${week.repetitions} von höchstens ${count(limit, 'Wiederholung', 'Wiederholungen')}.`,
  onlySimulated: 'Bisher nur simulierte Trainings. Sie zählen nicht als Training.',
  noneYet: 'Noch kein Ergebnis.',
  session: {
    analysed: '',
    recording: 'wird gerade aufgenommen',
    analysing: 'wird ausgewertet',
    failed: 'nicht ausgewertet',
  },
};
