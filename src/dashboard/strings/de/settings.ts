import type { Strings } from '../shape.ts';

export const settings: Strings['settings'] = {
  language: 'Sprache',
  languageWhy: 'Die Seite lädt neu; ein Training läuft weiter.',
  you: 'Du',
  name: 'Wie du genannt werden möchtest',
  nameWhy:
    'Steht hier und auf dem, was du druckst. Keine Aufnahme enthält ihn, und er wird nirgends hingesendet.',
  keepName: 'Speichern',
  nameKept: 'Gespeichert.',
  hand: 'Du spielst',
  handWhy: 'Es zählt ab dem nächsten Training: Dein hinterer Arm ist der rechte oder der linke.',
  folder: 'Was gespeichert ist',
  folderPath: (path) => `Gespeichert auf diesem Computer in ${path}`,
};
