import type { DiskKey, KeepingKey } from '../../../streaming/contract.ts';

/** What becomes of the recording. */
export const KEEPING: Readonly<Record<KeepingKey, string>> = {
  'none-kept': 'Deine Einheiten werden nicht gespeichert: {why}.',
  'not-kept': 'Diese Einheit wird nicht gespeichert: {why}. Du kannst trotzdem weiterüben.',
  waits:
    'Diese Einheit lässt sich jetzt nicht speichern: {why}. Übe weiter; sie bleibt im Arbeitsspeicher und wird gespeichert, sobald das behoben ist.',
  'tried-again': 'Diese Einheit ließ sich nicht speichern: {why}. Es wird noch einmal versucht.',
  restored:
    'Der Datenträger nimmt wieder Daten an: Diese Einheit ist von Anfang an gespeichert, nichts davon fehlt.',
  note: 'Deine Notiz ließ sich nicht speichern: {why}.',
  pain: 'Dein Schmerz ließ sich nicht speichern: {why}.',
  plan: 'Dein Plan ließ sich nicht speichern: {why}.',
};

export const DISK: Readonly<Record<DiskKey, string>> = {
  full: 'der Datenträger ist voll',
  large: 'keine Datei darf hier größer sein',
  quota: 'der erlaubte Platz ist verbraucht',
  'read-only': 'der Datenträger lässt sich nur lesen',
  denied: 'in den Ordner darf nicht geschrieben werden: prüfe seine Rechte',
  gone: 'der Ordner ist nicht mehr da',
  broken: 'der Datenträger meldet einen Fehler',
};
