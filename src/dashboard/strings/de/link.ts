import type { LinkTextKey } from '../../../streaming/hubContract/linkTexts.ts';

/** The connection with the coach's hub. */
export const LINK: Readonly<Record<LinkTextKey, string>> = {
  'not-kept':
    'Einheiten werden gerade nicht gespeichert, deshalb kann nichts an einen Coach gesendet werden.',
  'not-connected': 'Verbinde dich erst mit deinem Coach.',
  connected: 'Löse erst die Verbindung mit dem anderen Hub.',
  'bad-address': 'Das ist keine Adresse eines Hubs: Sie beginnt mit https://',
  'plain-http':
    'Diese Adresse ist nicht verschlüsselt: Wer auf dem Weg mitliest, sieht deine Aufnahmen und Notizen. Bitte deinen Coach um eine Adresse mit https:// oder mach trotzdem weiter.',
  'no-answer': 'Der Hub antwortet nicht.',
  'not-a-hub': 'Was unter dieser Adresse antwortet, ist kein Hub dieser Version.',
  'unknown-here':
    'Der Hub kennt diesen Computer nicht mehr. Löse die Verbindung, lass dir einen neuen Code geben und verbinde dich noch einmal.',
  'same-there': 'Dieselbe Aufnahme war schon auf dem Hub.',
};
