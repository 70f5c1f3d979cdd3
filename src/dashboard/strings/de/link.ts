import type { LinkTextKey } from '../../../streaming/hubContract/linkTexts.ts';

/** The connection with the coach's hub. */
export const LINK: Readonly<Record<LinkTextKey, string>> = {
  'not-kept':
    'Trainings werden gerade nicht gespeichert, deshalb kann nichts an einen Coach gesendet werden.',
  'not-connected': 'Verbinde dich erst mit deinem Coach.',
  connected: 'Trenne zuerst die Verbindung mit dem anderen Hub.',
  'bad-address': 'Hub-Adresse: muss mit https:// beginnen',
  'plain-http':
    'Diese Adresse ist nicht verschlüsselt. Andere im Netz könnten deine Aufnahmen und Notizen lesen. Bitte deinen Coach um eine Adresse mit https:// oder verbinde trotzdem.',
  'no-answer': 'Der Hub antwortet nicht.',
  'not-a-hub': 'Unter dieser Adresse ist kein Hub dieser Version.',
  'unknown-here':
    'Der Hub kennt diesen Computer nicht mehr. Trenne die Verbindung, hol dir einen neuen Code und verbinde dich neu.',
  'same-there': 'Diese Aufnahme ist schon auf dem Hub.',
};
