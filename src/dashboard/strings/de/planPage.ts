import type { Strings } from '../shape.ts';
import { count, writing } from './numbers.ts';

export const planPage: Strings['planPage'] = {
  title: 'Plan',
  loading: 'Der Plan wird geladen …',
  author: {
    default: 'Das ist der Standardplan. Du kannst ihn ändern.',
    student: 'Diesen Plan hast du geschrieben. Du kannst ihn ändern.',
    coach:
      'Diesen Plan hat dein Coach festgelegt. Schreib deinem Coach, wenn du ihn ändern möchtest.',
  },
  next: 'Änderungen gelten ab deinem nächsten Training. Gespeicherte Trainings werden weiter nach ihrem damaligen Plan beurteilt.',
  note: 'Notiz',
  stage: 'Stufe',
  mix: 'Verhältnis',
  mixText: (rehearsals, balls) =>
    balls === 0
      ? 'Nur Übungen'
      : `${count(rehearsals, 'Übung', 'Übungen')}, dann ${balls === 1 ? 'ein Ball' : `${balls} Bälle`}`,
  volume: 'Umfang',
  volumeText: (session, week) =>
    `Höchstens ${count(session, 'Wiederholung', 'Wiederholungen')} pro Training, ${week} pro Woche`,
  targets: 'Zielwerte',
  target: 'Zielwert',
  basis: (basis) => `Jeder Zielwert ist eine ${basis}.`,
  notAsked: 'kein Zielwert',
  drawing: (measure) => `Zeichnung: ${measure}`,
  howSure: 'Genauigkeit',
  checklist: 'Bevor du anfängst',
  checklistWhy: 'Übliche Praxis, nicht aus einer Studie.',
  edit: 'Bearbeiten',
  leave: 'Zurück, ohne zu speichern',
  change: 'Plan ändern',
  what: 'Deine Änderungen',
  nothing: 'Noch keine Änderungen.',
  invalid: 'Bitte korrigiere die markierten Felder.',
  save: 'Plan speichern',
  saved: 'Gespeichert.',
  standard: 'Auf Standardplan zurücksetzen',
  asItIs: 'Meine Änderungen verwerfen',
  history: 'Frühere Versionen',
  version: (number, ms) => `Version ${number}, ${writing.day(ms)}`,
  same: 'Keine Änderung.',
  takeUp: (number) => `Version ${number} verwenden`,
  weekFull: 'Du hast das Wochenlimit erreicht. Ruh dich aus oder frag deinen Coach.',
  read: 'Plan lesen',
};
