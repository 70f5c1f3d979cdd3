import type { DiskKey, KeepingKey } from '../../../streaming/contract.ts';

/** What becomes of the recording. */
export const KEEPING: Readonly<Record<KeepingKey, string>> = {
  'none-kept': 'Deine Trainings werden nicht gespeichert: {why}.',
  'not-kept': 'Dieses Training wird nicht gespeichert: {why}. Du kannst trotzdem weiterüben.',
  waits:
    'Dieses Training lässt sich jetzt nicht speichern: {why}. Du kannst weiterüben. Es bleibt im Arbeitsspeicher und wird gespeichert, sobald das Problem behoben ist.',
  'tried-again': 'Dieses Training ließ sich nicht speichern: {why}. Neuer Versuch läuft.',
  restored:
    'Das Speichern funktioniert wieder. Dieses Training ist vollständig gespeichert, von Anfang an.',
  note: 'Deine Notiz ließ sich nicht speichern: {why}.',
  pain: 'Deine Schmerzangabe ließ sich nicht speichern: {why}.',
  plan: 'Dein Plan ließ sich nicht speichern: {why}.',
};

export const DISK: Readonly<Record<DiskKey, string>> = {
  full: 'der Datenträger ist voll',
  large: 'die Datei ist zu groß für diesen Datenträger',
  quota: 'das Speicherkontingent ist aufgebraucht',
  'read-only': 'der Datenträger ist schreibgeschützt',
  denied: 'keine Schreibrechte für den Ordner',
  gone: 'den Ordner gibt es nicht mehr',
  broken: 'der Datenträger meldet einen Fehler',
};
