import type { HubStrings } from '../hubShape.ts';
import { writing } from './numbers.ts';

const DAY_MS = 86_400_000;

export const { day, dayAndTime: moment } = writing;

/** Das Jahr nur, wo es ein anderes als das jetzige ist. */
export const shortDay = (ms: number): string => {
  const year =
    new Date(ms).getFullYear() === new Date().getFullYear() ? {} : { year: 'numeric' as const };
  return new Date(ms).toLocaleDateString(writing.tag, { day: 'numeric', month: 'short', ...year });
};

function daysBetween(fromMs: number, toMs: number): number {
  const midnight = (ms: number): number => new Date(ms).setHours(0, 0, 0, 0);
  return Math.round((midnight(toMs) - midnight(fromMs)) / DAY_MS);
}

export function ago(ms: number, nowMs: number): string {
  const days = daysBetween(ms, nowMs);
  if (days <= 0) return 'heute';
  if (days === 1) return 'gestern';
  return days < 30 ? `vor ${days} Tagen` : day(ms);
}

export const shell: HubStrings['shell'] = {
  title: (page) => `${page} · Stillcatch`,
  skip: 'Direkt zum Inhalt',
  pages: 'Seiten',
  nav: {
    home: { coach: 'Wer braucht mich', student: 'Mein Training' },
    texts: 'Texte und Vorlagen',
    club: 'Club',
    pairing: 'Computer koppeln',
    safety: 'Sicherheit',
    help: 'Hilfe',
    account: 'Konto',
  },
  demo: 'Demo-Club',
  demoWhy: 'Erfundene Personen; ihre Trainings sind simuliert.',
  settings: 'Mehr',
  signedInAs: (name) => `Angemeldet als ${name}`,
  signOut: 'Abmelden',
  keyList: {
    student: [['C', 'Kommentar schreiben']],
    coach: [
      ['/', 'Spieler suchen'],
      ['J K', 'nächster, voriger Spieler'],
      ['Enter', 'Spieler öffnen'],
      ['O', 'Training der Zeile öffnen'],
      ['N', 'nächstes Training ansehen'],
      ['R', 'als angesehen markieren'],
      ['C', 'Kommentar schreiben'],
      ['L', 'Wiederholung korrigieren'],
      ['G', 'zurück zur Liste'],
    ],
  },
  loading: 'Wird geladen …',
  failed: 'Diese Seite konnte nicht geladen werden',
  unreachable:
    'Der Hub ist nicht erreichbar. Läuft er, und ist dieses Gerät im Netz? Dein Text bleibt erhalten, solange diese Seite offen ist.',
  again: 'Noch einmal versuchen',
  nowhere: 'Seite nicht gefunden',
  nowhereHelp: 'Sie wurde vielleicht gelöscht, oder du hast keinen Zugriff.',
  toStart: 'Zur Startseite',
  cancel: 'Abbrechen',
  save: 'Speichern',
  remove: 'Löschen',
  day,
  moment,
  ago,
};
