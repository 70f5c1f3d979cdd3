import type { HubStrings } from '../hubShape.ts';
import { moment } from './hubShell.ts';

export const entry: HubStrings['entry'] = {
  clubName: 'Name des Clubs oder der Golfschule',
  name: 'Dein Name',
  nameWhy: {
    coach: 'Deine Spieler und Kollegen sehen diesen Namen.',
    student: 'Dein Coach sieht diesen Namen.',
  },
  login: 'Anmeldename',
  loginWhy: 'Buchstaben, Ziffern, Punkte und Striche. Andere sehen ihn nicht.',
  password: 'Passwort',
  passwordWhy: 'Mindestens 10 Zeichen. Mehrere Wörter sind ein gutes Passwort.',
  showPassword: 'Anzeigen',
  hand: { title: 'Spielt', right: 'rechtshändig', left: 'linkshändig' },
  setup: {
    title: 'Diesen Hub einrichten',
    lead: 'Du bist die erste Person hier und übernimmst die Clubleitung: als Coach mit eigenen Spielern, der auch den Club verwaltet.',
    code: 'Einmalcode',
    codeWhy: 'Er steht im Terminal, in dem der Hub gestartet wurde.',
    go: 'Hub einrichten',
  },
  signIn: {
    title: 'Anmelden',
    lead: 'Für Coaches und Spieler dieses Hubs.',
    go: 'Anmelden',
    forgot:
      'Passwort vergessen? Bitte deinen Coach, oder wer den Hub betreibt, um eine neue Einladung.',
  },
  invitation: {
    title: (club) => `Willkommen bei ${club}`,
    coach: (by) => `${by} lädt dich als Coach dieses Clubs ein.`,
    student: (by) => `${by} lädt dich als Spieler ein.`,
    expires: (ms) => `Die Einladung gilt einmal, bis ${moment(ms)}.`,
    gone: 'Diese Einladung gilt nicht mehr',
    goneHelp:
      'Sie wurde benutzt, ist abgelaufen oder wurde zurückgezogen. Bitte deinen Coach um eine neue. Wenn du schon beigetreten bist, melde dich an.',
    sentTitle: 'Was dein Coach sieht',
    sent: [
      'Nichts, bis du deinen eigenen Computer koppelst und dort das Senden einschaltest.',
      'Dann nach jedem Training: die Aufnahme beider Sensoren, die Messwerte, deine Schmerzangaben und deine Notiz.',
      'Keine Bilder, kein Ton, kein Standort. Filme nur, wenn du oder dein Coach sie anhängen.',
      'Nur dein Coach sieht es, nicht die anderen Coaches oder Spieler.',
      'Du kannst das Senden jederzeit ausschalten, alles exportieren und deinen Coach bitten, alles endgültig zu löschen.',
    ],
    agree: 'Ich habe gelesen, was gesendet wird, und den Sicherheitshinweis oben',
    go: 'Beitreten',
    signedIn: (name) =>
      `Du bist als ${name} angemeldet. Beim Beitreten entsteht ein neues Konto, und du wirst damit angemeldet.`,
  },
  account: {
    title: 'Dein Konto',
    facts: (login, role) => `Anmeldename: ${login} · ${role}`,
    role: { owner: 'Clubleitung und Coach', coach: 'Coach', student: 'Spieler' },
    password: 'Passwort ändern',
    current: 'Aktuelles Passwort',
    next: 'Neues Passwort',
    change: 'Passwort ändern',
    changed: 'Passwort geändert. Alle anderen Browser wurden abgemeldet.',
    elsewhere: 'Andere Browser',
    elsewhereWhy: 'Noch auf einem anderen Computer angemeldet?',
    out: 'Überall sonst abmelden',
    outDone: 'Alle anderen Browser wurden abgemeldet.',
  },
  pairing: {
    title: 'Deinen Computer koppeln',
    lead: 'Wenn dein Trainingscomputer gekoppelt ist, sendet er deine Trainings automatisch.',
    steps: [
      'Öffne auf diesem Computer Stillcatch und geh zu „Coach“.',
      'Gib die Adresse und den Code von unten ein.',
      'Wähle dort, ob Trainings gesendet werden dürfen. Du kannst das jederzeit ändern.',
    ],
    make: 'Code erstellen',
    another: 'Noch einen Code erstellen',
    code: 'Code',
    hub: 'Hub-Adresse',
    until: (ms) => `Gilt einmal, bis ${moment(ms)}.`,
    qr: 'QR-Code der Hub-Adresse',
    copy: 'Kopieren',
    copied: 'Kopiert',
  },
};
