import type { HubStrings } from '../hubShape.ts';
import { count } from './numbers.ts';

const MOST_NAMES = 3;

const names = (all: readonly string[]): string =>
  all.length <= MOST_NAMES
    ? all.join(', ')
    : `${all.slice(0, MOST_NAMES).join(', ')} und ${all.length - MOST_NAMES} weitere`;

export const news: HubStrings['news'] = {
  students: (changed) => `Neu: ${names(changed)}.`,
  waiting: 'Neue Daten sind da. Sie erscheinen, wenn du eine Pause machst.',
  show: 'Jetzt zeigen',
  sessions: (n) => `${count(n, 'neues Training', 'neue Trainings')} angekommen.`,
  analysed: (n) => `${count(n, 'Training', 'Trainings')} ausgewertet.`,
  comments: (n) => `${count(n, 'neuer Kommentar', 'neue Kommentare')}.`,
  commentBy: (name) => `Neuer Kommentar von ${name}.`,
  film: 'Film hinzugefügt.',
  measured: 'Auswertung fertig. Die Zahlen sind aktuell.',
  analysing: 'Wird neu ausgewertet. Die Zahlen unten aktualisieren sich automatisch.',
};
