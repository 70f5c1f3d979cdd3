import type { Strings } from '../shape.ts';

export const plan: Strings['plan'] = {
  name: 'Name des Plans',
  stage: 'Stufe',
  ratio: 'Mischung',
  rehearsals: 'Proben',
  balls: 'vor so vielen Bällen',
  noBalls: 'In dieser Stufe sind keine Bälle verlangt.',
  targets: 'Vorgaben',
  targetsWhy: 'Lass beide Enden leer, um nichts zu verlangen.',
  columns: {
    measure: 'Messwert',
    min: 'Mindestens',
    max: 'Höchstens',
    last: 'Letzte Werte: Median, mittlere Hälfte',
  },
  end: {
    min: (measure) => `${measure}: mindestens`,
    max: (measure) => `${measure}: höchstens`,
  },
  last: (median, low, high, n) => `${median} (${low} bis ${high}), n ${n}`,
  noLast: 'noch nicht gemessen',
  volume: 'Umfang',
  perSession: 'Wiederholungen in einer Einheit, höchstens',
  perWeek: 'Wiederholungen in einer Woche, höchstens',
  volumeWhy:
    'Die meisten Golfverletzungen kommen von Überlastung; die Zahlen sind Festlegungen, keine Norm.',
  ownRange: 'Eigener angenehmer Bereich (freiwillig)',
  ownRangeWhy:
    'Wie bei der Bereichsprüfung selbst gemessen; in seiner Nähe kommt eine Warnung. Keine Zahl, auf die du hintrainieren sollst.',
  ranges: {
    externalRotationDeg: 'Arm nach außen gedreht',
    flexionDeg: 'Vorbeugen',
    lateralTrailDeg: 'Neigung zur hinteren Seite',
    lateralLeadDeg: 'Neigung zur vorderen Seite',
  },
  checklist: 'Checkliste, je eine Zeile',
  note: 'Notiz an dich',
  deg: '°',
};
