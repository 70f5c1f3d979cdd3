import { targetText } from '../../../coaching/measureText.ts';
import { STAGES as ENGLISH } from '../../../coaching/plan.ts';
import type { PlanChangeWords } from '../../../coaching/planChanges.ts';
import { measureInfo } from './measures.ts';
import { VALUE_WORDS } from './numbers.ts';

export const TARGET_BASIS = 'Festlegung fürs Training, keine veröffentlichte Norm';

export const STAGES = {
  movement: {
    ...ENGLISH.movement,
    name: 'Nur die Bewegung',
    text: 'Proben ohne Bälle, bis die Reihenfolge leichtfällt.',
  },
  'short-swings': {
    ...ENGLISH['short-swings'],
    name: 'Mit kurzen Schwüngen',
    text: 'Proben, und dazwischen Bälle mit einem kurzen, leichten Schwung.',
  },
  'full-mix': {
    ...ENGLISH['full-mix'],
    name: 'Volle Mischung',
    text: 'Proben, und dazwischen Bälle mit dem vollen Schwung.',
  },
};

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

export const CHANGE_WORDS: PlanChangeWords = {
  changed: (what, before, after) => `${capital(what)}: ${after}, vorher ${before}.`,
  fields: {
    name: 'Name',
    stage: 'Stufe',
    mix: 'Mischung',
    perSession: 'Wiederholungen in einer Einheit',
    perWeek: 'Wiederholungen in einer Woche',
    externalRotationDeg: 'eigener Bereich, Arm nach außen gedreht',
    flexionDeg: 'eigener Bereich, Vorbeugen',
    lateralTrailDeg: 'eigener Bereich, Neigung zur hinteren Seite',
    lateralLeadDeg: 'eigener Bereich, Neigung zur vorderen Seite',
  },
  measure: (measure) => measureInfo[measure].name,
  target: (measure, target) => targetText(measure, target, VALUE_WORDS),
  notAsked: 'nicht verlangt',
  stage: (stage) => STAGES[stage].name,
  rehearsalsOnly: 'nur Proben',
  ratio: (rehearsals, balls) => `${rehearsals} zu ${balls}`,
  atMost: (n) => `höchstens ${n}`,
  notSet: 'nicht gesetzt',
  added: (item) => `Checkliste, neu: ${item}`,
  gone: (item) => `Checkliste, nicht mehr: ${item}`,
  otherOrder: 'Checkliste: andere Reihenfolge.',
  note: {
    gone: 'Die Notiz wurde entfernt.',
    added: 'Eine Notiz kam dazu.',
    rewritten: 'Die Notiz wurde neu geschrieben.',
  },
};
