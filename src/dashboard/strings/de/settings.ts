import type { Strings } from '../shape.ts';

export const settings: Strings['settings'] = {
  language: 'Sprache',
  languageWhy: 'Die Seite lädt neu. Ein Training läuft weiter.',
  you: 'Du',
  name: 'Dein Name',
  nameWhy:
    'Erscheint hier und auf Ausdrucken. Er ist in keiner Aufnahme enthalten und wird nirgendwohin gesendet.',
  keepName: 'Speichern',
  nameKept: 'Gespeichert.',
  hand: 'Du spielst',
  handWhy:
    'Gilt ab dem nächsten Training. Rechtshändig: Der Sensor sitzt am rechten Arm. Linkshändig: am linken Arm.',
  folder: 'Deine Daten',
  folderPath: (path) => `Gespeichert auf diesem Computer in ${path}`,
};
