import { MEASURE_INFO, type MeasureInfo, type MeasureKey } from '../../../coaching/measureInfo.ts';

type Told = Pick<MeasureInfo, 'name' | 'term' | 'what' | 'how' | 'cannotSee'> & {
  readonly sure: string;
  readonly source: string;
};

const BROUWER =
  'Brouwer et al. 2021 (Sensor gegen optische Messung, Golfschwünge unter den Bewegungen)';
const OWN_AIM = 'eigenes Ziel des Projekts';
const OWN_TIMES = 'eigenes Ziel des Projekts: Loslassen und Armstart 25 ms, Fangen 15 ms';
const timing = (plusMinus: string): string =>
  `±${plusMinus}, aus dem Zeitziel an simulierten Bewegungen; nicht an Menschen geprüft`;

const TRUNK = {
  sure: 'etwa ±4° am Menschen',
  source: BROUWER,
  cannotSee:
    'Becken und Form der Wirbelsäule: Ein Sensor auf dem Brustbein misst nur den Brustkorb.',
};
const AXIAL = {
  sure: '±10 bis 15° am Menschen; ein Sensor am Oberarm zeigt 25 bis 50 % zu wenig',
  source: 'Ludewig et al. 2002; Warner und Heller 2025',
  cannotSee:
    'Der Knochen selbst: Haut gleitet darüber, der Arm dreht sich also mehr als der Sensor. Vergleiche nur mit dir selbst.',
};
const RELEASE_CANNOT =
  'Das Öffnen der Hand: Als Loslassen gilt der Moment, in dem die Brust startet.';
const SPAN =
  'von oben bis zum Fangen (bei einem Ball: bis zur schnellsten Drehung vor dem Treffer)';

const TOLD: Record<MeasureKey, Told> = {
  holdS: {
    name: 'Halten oben',
    term: null,
    sure: timing('0,04 s'),
    source: OWN_TIMES,
    what: 'Wie lange Brust und Arm oben still sind.',
    how: 'Vom Zeitpunkt, ab dem beide Sensoren sich kaum noch drehen, bis zum Start der Brust.',
    cannotSee: 'Ein Schläger, der sich bewegt, während Brust und Arm still sind.',
  },
  chestLeadMs: {
    name: 'Brust startet vor dem Arm',
    term: 'Vorsprung der Brust',
    sure: timing('35 ms'),
    source: OWN_TIMES,
    what: 'Start des Arms minus Start der Brust; unter 20 ms heißt es „gleichzeitig“.',
    how: 'Jeder Start liegt dort, wo eine Kurve durch den ersten Teil der Bewegung die Null verlässt.',
    cannotSee: `Das Becken, das vor beiden starten kann. ${RELEASE_CANNOT}`,
  },
  leanChangeDeg: {
    ...TRUNK,
    name: 'Vorneigung gehalten',
    term: 'Änderung der Neigung',
    what: 'Änderung des Winkels zwischen Brust und Senkrechter. Unter null: Du richtest dich auf.',
    how: `Richtung der Schwerkraft, von der Brust aus gesehen, ${SPAN}.`,
  },
  addedFlexionDeg: {
    ...TRUNK,
    name: 'Beugung über Drehung hinaus',
    term: 'zusätzliche Flexion',
    what: 'Vorbeugung, die durch Beugen dazukam, nicht durch das Drehen einer schon geneigten Brust.',
    how: `Der Gewinn ohne den Teil, den dieselbe Drehung allein ergäbe, ${SPAN}.`,
  },
  keptRotationDeg: {
    ...AXIAL,
    name: 'Arm nach außen gedreht geblieben',
    term: 'Außenrotation',
    what: 'Wie weit sich der Oberarm um seine Längsachse gedreht hat. Unter null: Außendrehung ging verloren.',
    how: `Drehgeschwindigkeit des Arms um seine Längsachse gegenüber der Brust, aufsummiert ${SPAN}.`,
  },
  turnTowardTargetDeg: {
    ...TRUNK,
    name: 'Brust zum Ziel gedreht',
    term: 'Drehung',
    what: 'Wie weit sich die Brust von oben zurückgedreht hat.',
    how: `Änderung der Blickrichtung der Brust, ${SPAN}.`,
  },
  releaseToCatchMs: {
    name: 'Loslassen bis Fangen',
    term: null,
    sure: timing('30 ms'),
    source: OWN_TIMES,
    what: 'Wie lange der Schläger fällt.',
    how: 'Vom Start der Brust bis zum kleinen Stoß des Fangens am Arm.',
    cannotSee: RELEASE_CANNOT,
  },
  fallCm: {
    name: 'Fallweg des Schlägers',
    term: 'freier Fall',
    sure: timing('9 cm nach 0,3 s'),
    source: OWN_TIMES,
    what: 'Wie weit ein losgelassener Gegenstand vom Loslassen bis zum Fangen fällt.',
    how: 'Die Hälfte von 9,80665 m/s² mal die Zeit im Quadrat.',
    cannotSee: 'Wenn die Hand den Schläger bremst oder trägt, fällt er weniger.',
  },
  flexionTopDeg: {
    ...TRUNK,
    name: 'Vorbeugung oben',
    term: 'Flexion',
    what: 'Beugung der Brust nach vorn, vom aufrechten Stand aus.',
    how: 'Richtung der Schwerkraft, von der Brust aus gesehen, am Ende des Haltens.',
  },
  flexionCatchDeg: {
    ...TRUNK,
    name: 'Vorbeugung beim Fangen',
    term: 'Flexion',
    what: 'Beugung der Brust nach vorn, vom aufrechten Stand aus.',
    how: 'Richtung der Schwerkraft, von der Brust aus gesehen, beim Fangen (bei einem Ball: bei der schnellsten Drehung vor dem Treffer).',
  },
  flexionGainDeg: {
    ...TRUNK,
    name: 'Gewonnene Vorbeugung',
    term: 'Zunahme der Flexion',
    what: 'Beugung beim Fangen minus Beugung oben. Das meiste davon kommt aus der Drehung.',
    how: `Summe aus dem Teil, den die Drehung erklärt, und dem zusätzlichen Teil, ${SPAN}.`,
  },
  turnExplainedDeg: {
    ...TRUNK,
    name: 'Beugung nur durch Drehen',
    term: 'durch die Drehung erklärt',
    what: 'Die Beugung, die dazukommt, wenn sich die Brust nur um ihre Längsachse dreht.',
    how: `Aus der Brust oben und ihrer Drehung um die Längsachse, ${SPAN}.`,
  },
  lateralChangeDeg: {
    ...TRUNK,
    name: 'Seitneigung vom Ziel weg',
    term: 'Änderung der Seitneigung',
    what: 'Änderung der Seitneigung. Über null: vom Ziel weg.',
    how: `Richtung der Schwerkraft, von der Brust aus gesehen, ${SPAN}.`,
  },
  turnTopDeg: {
    ...TRUNK,
    name: 'Brustdrehung oben',
    term: 'Drehung',
    what: 'Drehung gegenüber dem Ansprechen. Unter null: vom Ziel weg.',
    how: 'Blickrichtung der Brust gegenüber dem Ansprechen der Kalibrierung; jedes ruhige Ansprechen seither korrigiert die Drift.',
  },
  externalRotationTopDeg: {
    ...AXIAL,
    name: 'Arm oben nach außen gedreht',
    term: 'Außenrotation',
    what: 'Außendrehung des Oberarms gegenüber der Brust.',
    how: 'Dritter Winkel der Folge nach ISB-Norm; nur bei 30 bis 150° gehobenem Arm.',
  },
  elevationTopDeg: {
    name: 'Arm oben gehoben',
    term: 'Elevation',
    sure: 'Ziel: 2° an simulierten Bewegungen; nicht an Menschen geprüft',
    source: OWN_AIM,
    what: 'Winkel zwischen Oberarm und Rumpf.',
    how: 'Zweiter Winkel der Folge nach ISB-Norm.',
    cannotSee: 'Schulterblatt und Arm getrennt: Beide heben den Arm zusammen.',
  },
};

function told(key: MeasureKey): MeasureInfo {
  const { sure, source, ...words } = TOLD[key];
  const info = MEASURE_INFO[key];
  return { ...info, ...words, accuracy: { ...info.accuracy, text: sure, source } };
}

export const measureInfo = Object.fromEntries(
  (Object.keys(MEASURE_INFO) as MeasureKey[]).map((key) => [key, told(key)]),
) as Record<MeasureKey, MeasureInfo>;
