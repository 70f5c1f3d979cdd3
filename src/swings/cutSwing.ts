import type { AnalysedSwing, SwingReadings } from './analyseSwing.ts';
import type { SwingPhase } from './detector.ts';
import { NO_MEASURES, type RepetitionFlag } from './repetition.ts';
import { type Shock, type ShockSample, strongestShock } from './shock.ts';
import { SWING } from './swingLimits.ts';

/** One frame, as far as a swing that the signal cut off can be told by it. */
export interface CutSignals {
  readonly timeS: number;
  /** Samples are missing, or were, and nobody knows since where the person faces. */
  readonly astray: boolean;
  readonly phase: SwingPhase;
  /** Still at the top, now or before this movement from it. */
  readonly held: boolean;
  /** At address, which by gravity looks like the still ones before. */
  readonly set: boolean;
  /** Away from the target -. */
  readonly turnDeg: number;
  /** Toward the target, deg/s. */
  readonly turnRate: number;
  /** Toward the trail side +; needs no heading. */
  readonly lateralDeg: number;
  /** Start of the last still or slow period, session s. */
  readonly startS: number;
}

/** A swing that began and was then not seen, session s. */
interface Cut {
  readonly startS: number;
  readonly lostS: number;
  /** Seen on its way from the top as fast as a full swing, without a hold: no rehearsal. */
  readonly full: boolean;
}

/** The same once it is over, session s. */
export interface CutSwing extends Cut {
  readonly endS: number;
}

/** Plain data. */
export interface CutState {
  /** The last frame that was all there. */
  before: CutSignals | null;
  /** It was, and since then at most a swing began. */
  set: boolean;
  /** Not set up again since the last swing: where that ended may look like a top. */
  ended: boolean;
  cut: Cut | null;
  /** Of the present silence: a repetition was made of it. */
  told: boolean;
  /** Since when the trunk is upright or set again. */
  overS: number | null;
}

export const createCut = (): CutState => ({
  before: null,
  set: false,
  ended: false,
  cut: null,
  told: false,
  overS: null,
});

/** A backswing has begun: turned away farther than anybody waggles, deg. Choices, from simulation. */
const BEGUN_TURN_DEG = -10;
/** At the top and after the catch the trunk is bent to the lead side by 20-40 deg, at address and upright it is not. */
const BENT_DEG = -12;
const OVER_FOR_S = 0.3;
const IN_SWING: readonly SwingPhase[] = ['backswing', 'top', 'released'];

/**
 * Takes one frame; returns a swing that the signal cut off, once it is surely over.
 * @param seen the detector has just closed a swing: it saw enough after all
 */
export function stepCut(c: CutState, s: CutSignals, seen: boolean): CutSwing | null {
  if (seen) {
    c.cut = null;
    c.told = true;
    c.ended = true;
  }
  if (!s.astray) return findAgain(c, s, seen);
  const { before } = c;
  if (c.cut === null && !c.told && before !== null && hasBegun(c, before, s))
    c.cut = { startS: before.startS, lostS: before.timeS, full: isFull(before) };
  return isOver(c, s) ? tell(c, s.timeS) : null;
}

/** What still waits when the recording ends. */
export const closeCut = (c: CutState, endS: number): CutSwing | null =>
  c.cut === null ? null : tell(c, endS);

function findAgain(c: CutState, s: CutSignals, seen: boolean): CutSwing | null {
  const swing = c.cut !== null && !seen ? tell(c, s.timeS) : null;
  c.set = s.phase === 'address' && (s.set || c.set);
  c.ended &&= !c.set;
  c.before = s;
  c.cut = null;
  c.told = false;
  c.overS = null;
  return swing;
}

function hasBegun(c: CutState, before: CutSignals, now: CutSignals): boolean {
  if (IN_SWING.includes(before.phase)) return !c.ended;
  // where a swing ended, still and bent, the next does not begin
  return c.set && (before.turnDeg < BEGUN_TURN_DEG || now.lateralDeg < BENT_DEG);
}

function isOver(c: CutState, s: CutSignals): boolean {
  const on = c.cut === null || s.phase === 'top' || s.phase === 'released';
  if (on || s.lateralDeg < BENT_DEG) c.overS = null;
  else c.overS ??= s.timeS;
  return c.overS !== null && s.timeS - c.overS >= OVER_FOR_S;
}

const isFull = ({ phase, held, turnRate }: CutSignals): boolean =>
  phase === 'released' && !held && turnRate >= SWING.fullSwingDegPerS;

function tell(c: CutState, endS: number): CutSwing | null {
  const { cut } = c;
  c.cut = null;
  c.told = true;
  return cut && { ...cut, endS };
}

const FLAGS: readonly RepetitionFlag[] = ['gap', 'not-seen'];
/** A blow later than this after the signal went is not of this swing, s. A choice. */
const BLOW_WITHIN_S = 4;

/**
 * Times stand where the signal went: nothing is known of the moments themselves. What it was is told by a ball's blow,
 * where the arm felt one, or by its speed; else it is taken for what is done most.
 * @param shocks of the arm sensor, from the start of the swing to its end
 */
export function cutReadings(cut: CutSwing, shocks: readonly ShockSample[]): SwingReadings {
  const blow = strongestShock(shocks, cut.lostS, Math.min(cut.endS, cut.lostS + BLOW_WITHIN_S));
  const impact = blow !== null && blow.size >= SWING.surelyBallShock ? blow : null;
  const kind = impact ? 'ball' : cut.full ? 'practiceSwing' : 'rehearsal';
  const all = unseen(cut, impact);
  return {
    detected: all[kind],
    others: Object.values(all).filter((swing) => swing.kind !== kind),
  };
}

function unseen(
  { startS, lostS, endS }: CutSwing,
  impact: Shock | null,
): Readonly<Record<AnalysedSwing['kind'], AnalysedSwing>> {
  const common = { startS, topS: lostS, endS, measures: NO_MEASURES, flags: FLAGS };
  return {
    rehearsal: {
      kind: 'rehearsal',
      ...common,
      releaseS: lostS,
      armStartS: null,
      catchS: null,
      catchConfidence: 0,
      holdS: 0,
    },
    ball: { kind: 'ball', ...common, deliveryS: lostS, impactS: impact?.timeS ?? null },
    practiceSwing: { kind: 'practiceSwing', ...common, deliveryS: lostS },
  };
}
