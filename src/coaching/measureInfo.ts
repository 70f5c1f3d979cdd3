import type { Measures } from '../swings/repetition.ts';

export type MeasureKey = keyof Measures | 'holdS';

/** How sure a number is on people. */
export interface Accuracy {
  /** In the measure's unit; for a whisker beside the number. */
  readonly plusMinus: number;
  readonly text: string;
  readonly source: string;
}

/** Everything a screen or a table says about a measure. */
export interface MeasureInfo {
  /** Plain words; `term` follows in brackets. */
  readonly name: string;
  readonly term: string | null;
  readonly unit: '°' | 's' | 'ms' | 'cm';
  /** Decimals that the accuracy allows; -1 rounds to tens. */
  readonly decimals: number;
  /** A change whose sign means something: shown with it. */
  readonly signed: boolean;
  readonly better: 'higher' | 'lower' | 'neither';
  readonly accuracy: Accuracy;
  readonly what: string;
  readonly how: string;
  readonly cannotSee: string;
}

const THORAX: Accuracy = {
  plusMinus: 4,
  text: 'about ±4° on people',
  source: 'Brouwer et al. 2021 (sensor against optical, golf swings among the movements)',
};
const AXIAL: Accuracy = {
  plusMinus: 15,
  text: '±10 to 15° on people; a sensor on the upper arm shows 25 to 50 % too little',
  source: 'Ludewig et al. 2002; Warner and Heller 2025',
};
const ELEVATION: Accuracy = {
  plusMinus: 2,
  text: 'goal: 2° on simulated movement; not tested on people',
  source: "the project's own goal",
};
const timing = (plusMinus: number, unit: string): Accuracy => ({
  plusMinus,
  text: `±${plusMinus} ${unit}, from the timing goal on simulated movement; not tested on people`,
  source: "the project's own goal: release and arm start 25 ms, catch 15 ms",
});

const TRUNK_CANNOT =
  'Hips and the shape of the spine: one sensor on the breastbone measures the chest only.';
const ARM_CANNOT =
  'The exact bone: skin slides over it, so the arm rotates more than the sensor. Compare only with yourself.';
const RELEASE_CANNOT = 'The hand opening: release means the moment the chest starts.';
const SPAN = 'from the top to the catch (for a ball: to the fastest turn before impact)';

const trunk = {
  unit: '°',
  decimals: 0,
  accuracy: THORAX,
  cannotSee: TRUNK_CANNOT,
} as const;

/** Keys in the order of reading. */
export const MEASURE_INFO: Record<MeasureKey, MeasureInfo> = {
  holdS: {
    name: 'hold at the top',
    term: null,
    unit: 's',
    decimals: 1,
    signed: false,
    better: 'higher',
    accuracy: timing(0.04, 's'),
    what: 'How long chest and arm stay still at the top.',
    how: 'From the moment both sensors turn slower than a small limit to the start of the chest.',
    cannotSee: 'A club that moves while chest and arm are still.',
  },
  chestLeadMs: {
    name: 'chest starts before the arm',
    term: 'chest lead',
    unit: 'ms',
    decimals: -1,
    signed: true,
    better: 'higher',
    accuracy: timing(35, 'ms'),
    what: 'Start of the arm minus start of the chest. Under 20 ms it says "together".',
    how: 'Each start is where a curve through the first part of the movement leaves zero.',
    cannotSee: `The hips, which may start before both. ${RELEASE_CANNOT}`,
  },
  leanChangeDeg: {
    ...trunk,
    name: 'forward lean kept',
    term: 'lean change',
    signed: true,
    better: 'higher',
    what: 'Change of the angle between chest and vertical. Below zero: standing up.',
    how: `Direction of gravity seen from the chest, ${SPAN}.`,
  },
  addedFlexionDeg: {
    ...trunk,
    name: 'bend added beyond the turn',
    term: 'added flexion',
    signed: true,
    better: 'higher',
    what: 'Forward bend gained by bending, not by turning a chest that is already leaning.',
    how: `The gain minus the part that the same turn alone would give, ${SPAN}.`,
  },
  keptRotationDeg: {
    name: 'arm kept rotated outward',
    term: 'external rotation',
    unit: '°',
    decimals: 0,
    signed: true,
    better: 'higher',
    accuracy: AXIAL,
    what: 'How far the upper arm rotated about its own axis. Below zero: outward rotation was lost.',
    how: `Rotation rate of the arm about its own axis relative to the chest, added up ${SPAN}.`,
    cannotSee: ARM_CANNOT,
  },
  turnTowardTargetDeg: {
    ...trunk,
    name: 'chest turned toward the target',
    term: 'turn',
    signed: true,
    better: 'higher',
    what: 'How far the chest turned back from the top.',
    how: `Change of heading of the chest, ${SPAN}.`,
  },
  releaseToCatchMs: {
    name: 'release to catch',
    term: null,
    unit: 'ms',
    decimals: -1,
    signed: false,
    better: 'lower',
    accuracy: timing(30, 'ms'),
    what: 'How long the club falls.',
    how: 'From the start of the chest to the small shock of the catch at the arm.',
    cannotSee: RELEASE_CANNOT,
  },
  fallCm: {
    name: 'club drop',
    term: 'free fall',
    unit: 'cm',
    decimals: 0,
    signed: false,
    better: 'lower',
    accuracy: timing(9, 'cm after 0.3 s'),
    what: 'How far a dropped object falls in the time from release to catch.',
    how: 'Half of 9.80665 m/s² times the time squared.',
    cannotSee: 'If the hand slows or carries the club, it falls less.',
  },
  flexionTopDeg: {
    ...trunk,
    name: 'forward bend at the top',
    term: 'flexion',
    signed: true,
    better: 'neither',
    what: 'Bend of the chest forward from upright.',
    how: 'Direction of gravity seen from the chest, at the end of the hold.',
  },
  flexionCatchDeg: {
    ...trunk,
    name: 'forward bend at the catch',
    term: 'flexion',
    signed: true,
    better: 'neither',
    what: 'Bend of the chest forward from upright.',
    how: 'Direction of gravity seen from the chest, at the catch (for a ball: at the fastest turn before impact).',
  },
  flexionGainDeg: {
    ...trunk,
    name: 'forward bend gained',
    term: 'flexion gain',
    signed: true,
    better: 'neither',
    what: 'Bend at the catch minus bend at the top. Most of it comes from turning.',
    how: `Sum of the part explained by the turn and the added part, ${SPAN}.`,
  },
  turnExplainedDeg: {
    ...trunk,
    name: 'bend from turning alone',
    term: 'explained by the turn',
    signed: true,
    better: 'neither',
    what: 'The bend gained by a chest that only turns about its own axis.',
    how: `From the chest at the top and its turn about its own axis, ${SPAN}.`,
  },
  lateralChangeDeg: {
    ...trunk,
    name: 'side bend toward the trail side',
    term: 'lateral bend change',
    signed: true,
    better: 'neither',
    what: 'Change of the bend to the side. Above zero: toward the trail side.',
    how: `Direction of gravity seen from the chest, ${SPAN}.`,
  },
  turnTopDeg: {
    ...trunk,
    name: 'chest turn at the top',
    term: 'turn',
    signed: true,
    better: 'neither',
    what: 'Turn relative to address. Below zero: away from the target.',
    how: 'Heading of the chest relative to the address reference. Each still address since then corrects the drift.',
  },
  externalRotationTopDeg: {
    name: 'arm rotated outward at the top',
    term: 'external rotation',
    unit: '°',
    decimals: 0,
    signed: true,
    better: 'neither',
    accuracy: AXIAL,
    what: 'Outward rotation of the upper arm relative to the chest.',
    how: 'Third angle of the standard (ISB) sequence; only with the arm raised 30 to 150°.',
    cannotSee: ARM_CANNOT,
  },
  elevationTopDeg: {
    name: 'arm raised at the top',
    term: 'elevation',
    unit: '°',
    decimals: 0,
    signed: false,
    better: 'neither',
    accuracy: ELEVATION,
    what: 'Angle between upper arm and trunk.',
    how: 'Second angle of the standard (ISB) sequence.',
    cannotSee: 'Shoulder blade and arm separately: both raise the arm together.',
  },
};

export const MEASURE_KEYS = Object.keys(MEASURE_INFO) as readonly MeasureKey[];
