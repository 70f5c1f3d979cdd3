import type { Strings } from '../shape.ts';
import { count, writing } from './numbers.ts';

export const planPage: Strings['planPage'] = {
  title: 'Plan',
  loading: 'Der Plan wird geholt …',
  author: {
    default: 'Das ist der Standardplan. Du kannst ihn unten ändern.',
    student: 'Diesen Plan hast du geschrieben. Du kannst ihn unten ändern.',
    coach: 'Diesen Plan hat dein Coach eingestellt. Schreib ihm, wenn du ihn ändern möchtest.',
  },
  next: 'Er gilt ab deinem nächsten Training. Gespeicherte Einheiten bleiben nach dem Plan beurteilt, unter dem sie entstanden sind.',
  note: 'Notiz',
  stage: 'Stufe',
  mix: 'Mischung',
  mixText: (rehearsals, balls) =>
    balls === 0
      ? 'Nur Proben'
      : `${count(rehearsals, 'Probe', 'Proben')}, dann ${balls === 1 ? 'ein Ball' : `${balls} Bälle`}`,
  volume: 'Umfang',
  volumeText: (session, week) =>
    `Höchstens ${count(session, 'Wiederholung', 'Wiederholungen')} in einer Einheit, ${week} in einer Woche`,
  targets: 'Vorgaben',
  target: 'Vorgabe',
  basis: (basis) => `Jede Vorgabe ist eine ${basis}.`,
  notAsked: 'nicht verlangt',
  drawing: (measure) => `Zeichnung: ${measure}`,
  howSure: 'Wie sicher',
  checklist: 'Bevor du anfängst',
  checklistWhy: 'Übliche Praxis, ohne Quelle.',
  change: 'Plan ändern',
  what: 'Was du änderst',
  nothing: 'Noch nichts.',
  invalid: 'Einige Angaben stimmen noch nicht; der Satz daneben sagt, warum.',
  save: 'Plan speichern',
  saved: 'Gespeichert.',
  standard: 'Standardplan eintragen',
  asItIs: 'Meine Änderungen zurücknehmen',
  history: 'Frühere Fassungen',
  version: (number, ms) => `Fassung ${number}, ${writing.day(ms)}`,
  same: 'Wie die davor.',
  takeUp: (number) => `Fassung ${number} eintragen`,
  week: (done, limit) =>
    `Diese Woche: ${done} von höchstens ${count(limit, 'Wiederholung', 'Wiederholungen')}.`,
  weekFull: 'Die Woche ist voll: Ruh dich aus oder frag deinen Coach.',
  read: 'Plan lesen',
};
