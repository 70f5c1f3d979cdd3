import { unknownSessions } from '../../../coaching/notCounted.ts';
import type { HubStrings } from '../hubShape.ts';
import { ago, shortDay } from './hubShell.ts';
import { count } from './numbers.ts';

type Words = HubStrings['needs'];

const last: Words['last'] = ({ lastPracticeMs, simulatedSessions }, nowMs) => {
  if (lastPracticeMs !== null) return ago(lastPracticeMs, nowMs);
  return simulatedSessions > 0 ? 'nur simuliert' : 'nie';
};

function weekText({
  weekRehearsals,
  weekBalls,
  weekNotCounted,
}: Parameters<Words['lastAndWeek']>[0]): string {
  if (weekRehearsals + weekBalls > 0)
    return `${count(weekRehearsals, 'Übung', 'Übungen')}, ${count(weekBalls, 'Ball', 'Bälle')}`;
  return unknownSessions(weekNotCounted) > 0 ? 'noch nicht gezählt' : 'nichts';
}

export const needs: HubStrings['needs'] = {
  title: 'Wer braucht mich',
  lead: (needing, all) =>
    needing === 0
      ? `Von ${count(all, 'Spieler', 'Spielern')} braucht dich gerade niemand.`
      : `${needing} von ${count(all, 'Spieler', 'Spielern')} ${needing === 1 ? 'braucht' : 'brauchen'} dich.`,
  groups: { coach: 'Brauchen dich', small: 'Kleinigkeiten', well: 'Alles gut' },
  names: {
    pain: 'Schmerz',
    warning: 'Warnung',
    unreviewed: 'Anzusehen',
    unanswered: 'Frage',
    mix: 'Verhältnis',
    volume: 'Umfang',
    'no-practice': 'Kein Training',
    drift: 'Ziel verfehlt',
    'seen-warning': 'Gesehene Warnung',
    none: 'Alles gut',
  },
  filter: 'Zeigen',
  all: 'Alle',
  search: 'Nach Namen suchen',
  list: 'Spieler',
  keys: 'J und K: weiter. Enter: Spieler öffnen. O: Training öffnen. N: nächstes ansehen. /: suchen.',
  practised: 'Letztes Training:',
  last,
  lastAndWeek: (s, nowMs) => `Letztes Training: ${last(s, nowMs)}. In 7 Tagen: ${weekText(s)}.`,
  on: (ms) => `${shortDay(ms)}:`,
  quoted: (text) => `„${text}“`,
  also: (need, text) => `Außerdem ${need}: ${text}`,
  open: 'Training öffnen',
  answer: 'Antworten',
  toReview: (n) => `${n} ansehen`,
  calm: {
    mark: (n) =>
      `${count(n, 'unauffälliges Training', 'unauffällige Trainings')} als angesehen markieren`,
    why: 'Trainings ohne Schmerz, Warnung oder Frage, von Spielern ohne offene Punkte.',
    done: (n) => `${count(n, 'Training', 'Trainings')} als angesehen markiert.`,
    undo: 'Rückgängig',
  },
  pain: {
    open: 'Offener Schmerz',
    close: 'Mit Begründung schließen',
    title: (name) => `Den Schmerz von ${name} schließen?`,
    why: 'Er bleibt oben in deiner Liste, bis ein späteres Training schmerzfrei ist oder du ihn hier schließt. Neuer Schmerz öffnet ihn wieder. Die Begründung steht auch im Export des Spielers.',
    reason: 'Begründung',
    go: 'Schließen',
    session: 'Training öffnen',
    history: 'Geschlossener Schmerz',
    line: (upToMs, by, atMs) =>
      `Trainings bis ${shortDay(upToMs)}, geschlossen von ${by} am ${shortDay(atMs)}:`,
    reopened: (ms) => `Wieder geöffnet am ${shortDay(ms)}.`,
    reopen: 'Wieder öffnen',
    reopenOf: (reason) => `Wieder öffnen: ${reason.slice(0, 40)}`,
  },
  nothingFound: 'Keine Treffer. Ändere den Namen oder den Filter.',
  everyone: 'Alle zeigen',
  invite: {
    open: 'Spieler einladen',
    title: 'Spieler einladen',
    name: { student: 'Name des Spielers', coach: 'Name des Coachs' },
    nameWhy: 'Lässt sich beim Beitreten ändern.',
    go: 'Einladung erstellen',
    ready: (name) => `Sende das an ${name}`,
    once: 'Der Link gilt einmal und wird nur jetzt gezeigt. Sende ihn selbst oder lass ihn scannen.',
    reach: {
      'this-computer': {
        what: 'Dieser Link öffnet sich nur auf diesem Computer.',
        mend: 'Für Spieler anderswo: Beende den Hub und starte ihn mit seiner Adresse im Internet (--url https://…), oder für dein eigenes Netz mit --host und --url. Erstelle dann eine neue Einladung.',
      },
      'own-network': {
        what: 'Dieser Link öffnet sich nur in deinem eigenen Netz.',
        mend: 'Für Spieler anderswo: Beende den Hub und starte ihn mit seiner Adresse im Internet (--url https://…). Erstelle dann eine neue Einladung.',
      },
    },
    link: 'Link',
    scan: 'QR-Code des Einladungslinks',
    done: 'Fertig',
    another: 'Noch jemanden einladen',
  },
  empty: {
    title: 'Noch keine Spieler',
    text: 'Lade den ersten Spieler ein: Du bekommst einen Link und einen QR-Code. Sobald er beigetreten ist und einen Computer gekoppelt hat, kommt jedes Training automatisch hier an.',
    mail: 'Ein Spieler ohne Konto? Ein Training, das per Mail kam (.zip), öffnest du in deinem eigenen Stillcatch unter „Trainings“.',
  },
};
