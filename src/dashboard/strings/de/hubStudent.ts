import type { HubStrings } from '../hubShape.ts';
import { ago, day, moment } from './hubShell.ts';
import { count } from './numbers.ts';

export const student: HubStrings['student'] = {
  facts: (hand, joinedMs) => `${hand} · beigetreten ${day(joinedMs)}`,
  paired: (contactMs, nowMs) =>
    contactMs === null
      ? 'Computer gekoppelt, noch kein Kontakt'
      : `Computer zuletzt verbunden ${ago(contactMs, nowMs)}`,
  notPaired: 'kein Computer gekoppelt: Trainings kommen nicht automatisch an',
  review: (n) => (n === 1 ? '1 Training ansehen' : `${n} Trainings ansehen`),
  changePlan: 'Plan ändern',
  report: 'Bericht zum Drucken',
  compare: 'Zwei Zeiträume vergleichen',
  needs: 'Darum geht es',
  months: {
    title: 'Monate im Überblick',
    none: 'Erscheint hier, sobald Trainings angekommen sind.',
  },
  sessions: {
    title: 'Trainings',
    none: 'Noch keine Trainings.',
    noneHelp:
      'Trainings kommen automatisch an, sobald der Spieler einen Computer gekoppelt und das Senden eingeschaltet hat.',
    reviewed: (ms) => `angesehen ${day(ms)}`,
    notReviewed: 'nicht angesehen',
    comments: (n) => count(n, 'Kommentar', 'Kommentare'),
    warnings: (n) => count(n, 'Warnung', 'Warnungen'),
    pain: (before, after) =>
      `Schmerz ${before ?? 'nicht gefragt'} vorher, ${after ?? 'nicht gefragt'} nachher`,
    more: 'Ältere Trainings',
    mail: 'Training importieren (.zip)',
    mailed: 'Importiert. Es wird ausgewertet.',
    all: (n) => `Alle ${n} zeigen`,
  },
  plan: {
    title: 'Plan',
    now: (number, name) => `Version ${number}: ${name}`,
    from: (ms, by) => `gültig ab ${day(ms)}, von ${by}`,
    reached: (ms) => `auf dem Computer des Spielers seit ${moment(ms)}`,
    notReached: 'noch nicht auf dem Computer des Spielers',
    asks: (rehearsals, balls) =>
      balls === 0
        ? 'nur Übungen'
        : `${count(rehearsals, 'Übung', 'Übungen')} für je ${balls === 1 ? 'einen Ball' : `${balls} Bälle`}`,
    volume: (session, week) =>
      `höchstens ${session} Wiederholungen pro Training, ${week} pro Woche`,
    history: 'Versionen',
    first: 'Die erste Version.',
    same: 'Keine Änderungen an der Wertung.',
    again: 'Mit dieser Version beginnen',
    again_of: (number) => `Version ${number}`,
  },
  lessons: {
    title: 'Trainerstunden',
    none: 'Trage die Tage ein, an denen ihr euch getroffen habt. Sie erscheinen in den Verlaufsdiagrammen.',
    day: 'Tag',
    about: 'Thema',
    add: 'Trainerstunde hinzufügen',
    remove: (ms) => `Die Trainerstunde vom ${day(ms)} löschen`,
  },
  machines: {
    title: 'Gekoppelte Computer',
    none: 'Kein Computer gekoppelt. Der Spieler kann einen unter „Computer koppeln“ koppeln.',
    paired: (ms) => `gekoppelt ${day(ms)}`,
    seen: (ms) => (ms === null ? 'noch kein Kontakt' : `zuletzt verbunden ${moment(ms)}`),
    revoked: (ms) => `entkoppelt ${day(ms)}`,
    revoke: 'Entkoppeln',
    revokeOf: (name) => `${name} entkoppeln`,
  },
  data: {
    title: 'Daten des Spielers',
    export: 'Alles exportieren (.zip)',
    exportWhy: 'Alle Originalaufnahmen, Pläne, Kommentare und Trainerstunden.',
    invite: 'Neuer Einladungslink',
    inviteWhy: 'Für Spieler, die den Link oder das Passwort verloren haben.',
    remove: 'Alles löschen',
    removeTitle: (name) => `Alle Daten von ${name} löschen?`,
    removeWhy:
      'Aufnahmen, Filme, Pläne, Kommentare und das Konto werden hier endgültig gelöscht. Daten auf dem Computer des Spielers bleiben.',
    type: (name) => `Zur Bestätigung ${name} eingeben`,
    removeGo: 'Alles löschen',
  },
  edit: {
    open: 'Name oder Hand ändern',
    title: 'Name und Hand',
    name: 'Name',
    go: 'Speichern',
  },
  back: 'Alle Spieler',
};
