import type { WarningId } from '../../../coaching/judgement.ts';
import type { PainSign } from '../../../coaching/safetyTexts.ts';

export const NOT_A_MEDICAL_DEVICE =
  'Trainingshilfe, kein Medizinprodukt. Misst Bewegung, nicht das Verletzungsrisiko.';

export const OTHERS_COME_FIRST =
  'Hör bei Schmerz auf. Die Regeln vor Ort, von Range oder Club und der Rat von Ärztin, Arzt oder Physiotherapie gehen vor.';

export const RED_FLAGS = [
  'Schwäche in einem Bein',
  'Taubheit im Schritt und an der Innenseite der Oberschenkel',
  'veränderte Kontrolle über Blase oder Darm',
  'Fieber',
  'ein schwerer Sturz oder Schlag',
  'Schmerzen in der Brust',
  'ein verformter oder tauber Arm',
] as const;

export const PAIN_SIGNS: Readonly<Record<PainSign, string>> = {
  sharp: 'stechend',
  locking: 'blockiert',
  'giving way': 'gibt nach',
  numb: 'taub',
};

/** `{pain}` stands for the rating. */
export const WARNINGS: Readonly<Record<WarningId, string>> = {
  club: '3 m um dich herum müssen frei sein. Keine Kinder, Tiere oder Zuschauer. Geschlossene Schuhe, weicher Boden, nichts Zerbrechliches, genug Raum nach oben. Beginne mit einem kurzen oder gepolsterten Schläger.',
  history:
    'Ausrenkung, instabile oder operierte Schulter, operierter Rücken, Osteoporose, Schwangerschaft, frische Verletzung: Frag vor dieser Übung in der Arztpraxis oder Physiotherapie nach.',
  'warm-up': 'Wärm dich erst mindestens 10 Minuten auf. Das kann das Verletzungsrisiko senken.',
  'pain-now':
    'Du hast deinen Schmerz mit {pain} von 10 angegeben. Hör für heute auf. Ist er morgen noch da, geh in eine Arztpraxis oder zur Physiotherapie.',
  'pain-high':
    'Hör jetzt auf und hol dir Rat in der Arztpraxis oder Physiotherapie, bevor du wieder übst. Das Training endet hier.',
  'pain-next-day':
    'Dein Schmerz hat sich nicht gelegt. Ruh dich aus oder halbiere die Wiederholungen; hält er an, frag in der Arztpraxis oder Physiotherapie nach.',
  'red-flag': 'Das kann ein Notfall sein. Hör auf und hol dir jetzt ärztliche Hilfe.',
  'own-range':
    'Dein Arm ist nahe am Ende des Bereichs, den du als angenehm gemessen hast. Erzwinge nichts.',
  'trunk-own-range':
    'Dein Rumpf geht über den Bereich hinaus, den du als angenehm gemessen hast. Erzwinge nichts.',
  volume:
    'Das ist mehr als üblich für dich oder mehr als dein Plan. Die meisten Golfverletzungen kommen von Überlastung.',
  missed:
    'Du hast den Schläger zweimal bei den letzten fünf nicht gefangen. Fang ihn früher oder nimm einen leichteren.',
};
