/** A number is finite or `null` (not taken: a flag says why). Degrees, ms, cm and s as named. */
export interface Measures {
  readonly flexionTopDeg: number | null;
  readonly flexionCatchDeg: number | null;
  readonly flexionGainDeg: number | null;
  readonly turnExplainedDeg: number | null;
  readonly addedFlexionDeg: number | null;
  readonly leanChangeDeg: number | null;
  readonly turnTopDeg: number | null;
  readonly turnTowardTargetDeg: number | null;
  readonly lateralChangeDeg: number | null;
  readonly externalRotationTopDeg: number | null;
  readonly elevationTopDeg: number | null;
  /** Axial rotation of the humerus, outward +: negative is loss. */
  readonly keptRotationDeg: number | null;
  readonly chestLeadMs: number | null;
  readonly releaseToCatchMs: number | null;
  readonly fallCm: number | null;
}

/** Nothing was measured. */
export const NO_MEASURES: Measures = {
  flexionTopDeg: null,
  flexionCatchDeg: null,
  flexionGainDeg: null,
  turnExplainedDeg: null,
  addedFlexionDeg: null,
  leanChangeDeg: null,
  turnTopDeg: null,
  turnTowardTargetDeg: null,
  lateralChangeDeg: null,
  externalRotationTopDeg: null,
  elevationTopDeg: null,
  keptRotationDeg: null,
  chestLeadMs: null,
  releaseToCatchMs: null,
  fallCm: null,
};

export type RepetitionFlag =
  | 'gap'
  | 'not-seen'
  | 'saturated'
  | 'drift'
  | 'catch-assumed'
  | 'catch-not-detected'
  | 'landed'
  | 'elevation-out-of-range'
  | 'release-measured'
  | 'together'
  | 'impact-not-detected'
  | 'impact-not-seen'
  | 'marked-by-hand';

interface RepetitionBase {
  /** Counts from 1 within the session. */
  readonly index: number;
  /** Backswing start, session s. */
  readonly startS: number;
  /** Arrival at the top, session s. */
  readonly topS: number;
  /** Movement is over, session s. */
  readonly endS: number;
  readonly measures: Measures;
  readonly flags: readonly RepetitionFlag[];
}

export interface Rehearsal extends RepetitionBase {
  readonly kind: 'rehearsal';
  /**
   * Session s. Two sensors see the chest's start after the hold; with a third on the club it is the
   * start of free fall (flag `release-measured`).
   */
  readonly releaseS: number;
  readonly armStartS: number | null;
  readonly catchS: number | null;
  /** 0..1 */
  readonly catchConfidence: number;
  readonly holdS: number;
}

export interface Ball extends RepetitionBase {
  readonly kind: 'ball';
  /** Peak chest turn speed before impact, session s. */
  readonly deliveryS: number;
  /** Session s; `null` where a person says it was a ball and no blow was found (flag `impact-not-detected`). */
  readonly impactS: number | null;
}

export interface PracticeSwing extends RepetitionBase {
  readonly kind: 'practiceSwing';
  readonly deliveryS: number;
}

export type Repetition = Rehearsal | Ball | PracticeSwing;

/** When it was over for who did it, session s: the catch, or its end where no catch was seen. */
export const catchTimeS = ({ catchS, endS }: Pick<Rehearsal, 'catchS' | 'endS'>): number =>
  catchS ?? endS;
