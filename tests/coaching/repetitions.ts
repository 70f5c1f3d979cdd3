import type { Ball, Measures, Rehearsal } from '../../src/swings/repetition.ts';

/** Made-up numbers that meet every default target with room to spare. */
export const GOOD_MEASURES: Measures = {
  flexionTopDeg: 7,
  flexionCatchDeg: 46,
  flexionGainDeg: 39,
  turnExplainedDeg: 28.4,
  addedFlexionDeg: 10.6,
  leanChangeDeg: 1,
  turnTopDeg: -90,
  turnTowardTargetDeg: 60,
  lateralChangeDeg: 41,
  externalRotationTopDeg: 66,
  elevationTopDeg: 70,
  keptRotationDeg: -5,
  chestLeadMs: 80,
  releaseToCatchMs: 300,
  fallCm: 44.1,
};

type Changes = Partial<Omit<Rehearsal, 'measures'>> & { measures?: Partial<Measures> };

export function rehearsal({ measures, ...changes }: Changes = {}): Rehearsal {
  return {
    kind: 'rehearsal',
    index: 1,
    startS: 10,
    topS: 11,
    releaseS: 12.3,
    armStartS: 12.38,
    catchS: 12.6,
    catchConfidence: 0.9,
    endS: 13,
    holdS: 1.3,
    flags: [],
    ...changes,
    measures: { ...GOOD_MEASURES, ...measures },
  };
}

export function ball(measures: Partial<Measures> = {}, index = 1): Ball {
  return {
    kind: 'ball',
    index,
    startS: 20,
    topS: 21,
    deliveryS: 21.2,
    impactS: 21.25,
    endS: 22,
    flags: [],
    measures: {
      ...GOOD_MEASURES,
      chestLeadMs: null,
      releaseToCatchMs: null,
      fallCm: null,
      ...measures,
    },
  };
}
