import type { Strings } from '../shape.ts';
import { count } from './numbers.ts';

export const plan: Strings['plan'] = {
  name: 'Name des Plans',
  stage: 'Stufe',
  ratio: 'Verhältnis',
  rehearsals: 'Übungen',
  balls: 'Für je … Bälle',
  noBalls: 'Diese Stufe hat keine Bälle.',
  targets: 'Zielwerte',
  targetsWhy: 'Lass beide Felder leer, wenn es keinen Zielwert gibt.',
  columns: {
    measure: 'Messwert',
    min: 'Mindestens',
    max: 'Höchstens',
    last: 'Zuletzt: Median (mittlere Hälfte)',
  },
  end: {
    min: (measure) => `${measure}: mindestens`,
    max: (measure) => `${measure}: höchstens`,
  },
  last: (median, low, high, n) =>
    `${median} (die Hälfte lag zwischen ${low} und ${high}; ${count(n, 'Wiederholung', 'Wiederholungen')})`,
  noLast: 'noch nicht gemessen',
  volume: 'Umfang',
  perSession: 'Höchstzahl Wiederholungen pro Training',
  perWeek: 'Höchstzahl Wiederholungen pro Woche',
  volumeWhy:
    'Die meisten Golfverletzungen kommen von Überlastung. Die Zahlen sind Festlegungen, keine Norm.',
  ownRange: 'Angenehmer Bereich (optional)',
  ownRangeWhy:
    'Bei der Bereichsprüfung selbst gemessen. In seiner Nähe erscheint eine Warnung. Kein Trainingsziel.',
  ranges: {
    externalRotationDeg: 'Arm nach außen gedreht',
    flexionDeg: 'Vorbeugen',
    lateralTrailDeg: 'Seitneigung vom Ziel weg',
    lateralLeadDeg: 'Seitneigung zum Ziel hin',
  },
  checklist: 'Checkliste, ein Punkt pro Zeile',
  note: 'Notiz an dich',
  deg: '°',
};
