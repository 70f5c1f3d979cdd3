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
    text: 'Übungen ohne Bälle, bis der Ablauf leichtfällt.',
  },
  'short-swings': {
    ...ENGLISH['short-swings'],
    name: 'Mit kurzen Schwüngen',
    text: 'Übungen, dazwischen Bälle mit einem kurzen, leichten Schwung.',
  },
  'full-mix': {
    ...ENGLISH['full-mix'],
    name: 'Mit vollem Schwung',
    text: 'Übungen, dazwischen Bälle mit vollem Schwung.',
  },
};

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

export const CHANGE_WORDS: PlanChangeWords = {
  changed: (what, before, after) => `${capital(what)}: ${after}, vorher ${before}.`,
  fields: {
    name: 'Name',
    stage: 'Stufe',
    mix: 'Verhältnis',
    perSession: 'Wiederholungen pro Training',
    perWeek: 'Wiederholungen pro Woche',
    checklist: 'Checkliste',
    note: 'Notiz',
    externalRotationDeg: 'angenehmer Bereich, Arm nach außen gedreht',
    flexionDeg: 'angenehmer Bereich, Vorbeugen',
    lateralTrailDeg: 'angenehmer Bereich, Seitneigung vom Ziel weg',
    lateralLeadDeg: 'angenehmer Bereich, Seitneigung zum Ziel hin',
  },
  measure: (measure) => measureInfo[measure].name,
  target: (measure, target) => targetText(measure, target, VALUE_WORDS),
  notAsked: 'kein Zielwert',
  stage: (stage) => STAGES[stage].name,
  rehearsalsOnly: 'nur Übungen',
  ratio: (rehearsals, balls) => `${rehearsals} zu ${balls}`,
  atMost: (n) => `höchstens ${n}`,
  notSet: 'nicht festgelegt',
  added: (item) => `Checkliste, hinzugefügt: ${item}`,
  gone: (item) => `Checkliste, entfernt: ${item}`,
  otherOrder: 'Checkliste: neue Reihenfolge.',
  note: {
    gone: 'Notiz entfernt.',
    added: 'Notiz hinzugefügt.',
    rewritten: 'Notiz geändert.',
  },
};
