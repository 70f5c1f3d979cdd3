import type { BodyFrame } from '../body/segments.ts';
import { ZERO, dot, norm, normalise } from '../math/vec3.ts';
import { freeFall } from '../math/gravity.ts';
import type { SwingCandidate } from './detector.ts';
import { postureMeasures } from './measures.ts';
import { OVER_LEAKAGE, onsetTime } from './onset.ts';
import type { Ball, Measures, PracticeSwing, Rehearsal, RepetitionFlag } from './repetition.ts';
import { type Shock, type ShockSample, strongestShock } from './shock.ts';
import { type SwingWindow, indexAt, indexOfMax, smooth, swingWindow } from './window.ts';

/** Choices of the design: s, deg, deg/s, m/s^2. */
export const SWING = {
  /** Shorter is no hold. */
  shortestHoldS: 0.3,
  /** Peak turn speed of a full swing. */
  fullSwingDegPerS: 250,
  /** A full swing comes at least this near to the address heading. */
  throughDeg: -15,
  /** After a hold it has to go well past it: a rehearsal stops near the address. */
  throughAfterHoldDeg: 15,
  /** A ball's shock at the upper arm is larger than any catch's. */
  ballShock: 6.5,
  /** Where the blow of a ball is looked for about the fastest turn. */
  impactBeforePeakS: 0.06,
  impactAfterPeakS: 0.2,
  /** A rehearsal is a quick movement: peak within this time of its start; calm lowering takes longer. */
  quickRiseS: 0.42,
  /** No catch sooner than this after the release. */
  earliestCatchS: 0.08,
  /** The start of the arm's own movement is a jolt of its own for so long. */
  armStartsS: 0.05,
  /** After this the club has landed. */
  landedS: 0.55,
  /** Where no catch was seen, measures are taken here. */
  assumedCatchS: 0.4,
  /** Under this lead chest and arm start together. */
  togetherMs: 20,
} as const;

type Unnumbered<T> = Omit<T, 'index'>;
export type AnalysedSwing = Unnumbered<Rehearsal> | Unnumbered<Ball> | Unnumbered<PracticeSwing>;

interface Moments {
  readonly startS: number;
  readonly topS: number;
  readonly releaseS: number;
  readonly holdS: number;
  /** Index and size of the fastest turn toward the target. */
  readonly peakIndex: number;
  readonly peakTurnRate: number;
}

/**
 * Batch analysis of one closed candidate.
 * @param frames frames from before the backswing to the end of the movement
 * @param shocks the arm sensor's shock signal over the same time
 * @returns the repetition without its number, or `null` where the movement was none
 */
export function analyseSwing(
  frames: readonly BodyFrame[],
  shocks: readonly ShockSample[],
  candidate: SwingCandidate,
): AnalysedSwing | null {
  if (frames.length < 20) return null;
  const w = swingWindow(frames);
  const m = momentsOf(w, candidate);
  if (isFullSwing(w, m)) {
    const impact = ballImpact(w, shocks, m);
    // who holds at the top and then hits has hit a ball; who only swings on has rehearsed and missed
    if (impact !== null || m.holdS < SWING.shortestHoldS) return fullSwing(w, impact, candidate, m);
  }
  if (m.holdS < SWING.shortestHoldS) return null;
  return rehearsal(w, shocks, candidate, m);
}

function isFullSwing(w: SwingWindow, m: Moments): boolean {
  const through = m.holdS < SWING.shortestHoldS ? SWING.throughDeg : SWING.throughAfterHoldDeg;
  return (
    m.peakTurnRate >= SWING.fullSwingDegPerS &&
    w.signals.some((s, i) => i >= m.peakIndex && s.turnDeg >= through)
  );
}

function momentsOf(w: SwingWindow, c: SwingCandidate): Moments {
  const from = indexAt(w.timeS, c.leftTopS - 0.15);
  const end = indexAt(w.timeS, c.endS);
  const turnRate = w.signals.map((s) => s.turnRate);
  const peakIndex = indexOfMax(turnRate, from, end);
  const chestPeak = indexOfMax(w.chestSpeed, from, end);
  const startS = backswingStart(w, c, from);
  if (c.holdFromS === null) {
    const turn = w.signals.map((s) => -s.turnDeg);
    const top = indexOfMax(turn, indexAt(w.timeS, startS), peakIndex);
    const topS = w.timeS[top] ?? c.leftTopS;
    return {
      startS,
      topS,
      releaseS: topS,
      holdS: 0,
      peakIndex,
      peakTurnRate: turnRate[peakIndex] ?? 0,
    };
  }
  const holdIndex = indexAt(w.timeS, c.holdFromS + 0.1);
  const releaseS =
    onsetTime(w.timeS, w.chestSpeed, firstPeak(w.chestSpeed, from, chestPeak), holdIndex) ??
    c.leftTopS;
  const topS = arrivalAtTop(w, startS, holdIndex) ?? c.holdFromS;
  return {
    startS,
    topS,
    releaseS,
    holdS: Math.max(0, releaseS - topS),
    peakIndex,
    peakTurnRate: turnRate[peakIndex] ?? 0,
  };
}

/** The first local maximum that reaches most of the highest one: later humps are follow-through. */
function firstPeak(speed: readonly number[], from: number, highest: number): number {
  const level = 0.8 * (speed[highest] ?? 0);
  for (let i = from; i < highest; i++) {
    const here = speed[i] ?? 0;
    if (here >= level && here >= (speed[i + 1] ?? 0)) return i;
  }
  return highest;
}

function backswingStart(w: SwingWindow, c: SwingCandidate, topIndex: number): number {
  const first = indexAt(w.timeS, c.startS - 0.3);
  const peak = indexOfMax(w.chestSpeed, first, topIndex);
  return onsetTime(w.timeS, w.chestSpeed, peak, first) ?? c.startS;
}

/** End of the backswing: the onset model on the reversed movement. */
function arrivalAtTop(w: SwingWindow, startS: number, holdIndex: number): number | null {
  const first = indexAt(w.timeS, startS);
  const peak = indexOfMax(w.chestSpeed, first, holdIndex);
  const end = Math.min(holdIndex + 20, w.timeS.length - 1);
  const back = w.timeS.slice(peak, end + 1).map((t) => -t);
  const speed = w.chestSpeed.slice(peak, end + 1);
  const t = onsetTime(back.reverse(), speed.reverse(), speed.length - 1, 0);
  return t === null ? null : -t;
}

function fullSwing(
  w: SwingWindow,
  impact: Shock | null,
  c: SwingCandidate,
  m: Moments,
): AnalysedSwing | null {
  const until = impact === null ? w.timeS.length - 1 : indexAt(w.timeS, impact.timeS);
  const deliveryS = w.timeS[indexOfMax(w.headingRate, indexAt(w.timeS, m.topS), until)] ?? m.topS;
  const posture = postureMeasures(w, m.topS, deliveryS);
  if (posture === null) return null;
  const measures = { ...posture, chestLeadMs: null, releaseToCatchMs: null, fallCm: null };
  const flags = signalFlags(w, m.startS, impact?.timeS ?? deliveryS, measures);
  const { startS, topS } = m;
  const common = { startS, topS, endS: c.endS, measures, flags, deliveryS };
  return impact === null
    ? { kind: 'practiceSwing', ...common }
    : { kind: 'ball', ...common, impactS: impact.timeS };
}

/** A blow as strong as a ball's, near the fastest turn. */
function ballImpact(w: SwingWindow, shocks: readonly ShockSample[], m: Moments): Shock | null {
  const peakS = w.timeS[m.peakIndex] ?? m.topS;
  const shock = strongestShock(
    shocks,
    peakS - SWING.impactBeforePeakS,
    peakS + SWING.impactAfterPeakS,
  );
  return shock !== null && shock.size >= SWING.ballShock ? shock : null;
}

function rehearsal(
  w: SwingWindow,
  shocks: readonly ShockSample[],
  c: SwingCandidate,
  m: Moments,
): AnalysedSwing | null {
  if (isCalm(w, c, m)) return null;
  const armStartS = armStart(w, c);
  const shock = strongestShock(
    shocks,
    Math.max(m.releaseS + SWING.earliestCatchS, (armStartS ?? 0) + SWING.armStartsS),
    m.releaseS + SWING.landedS + 0.1,
  );
  const caught = shock !== null && shock.timeS - m.releaseS <= SWING.landedS;
  const toS = caught ? shock.timeS : m.releaseS + SWING.assumedCatchS;
  const posture = postureMeasures(w, m.releaseS, toS);
  if (posture === null) return null;
  const leadMs = armStartS === null ? null : (armStartS - m.releaseS) * 1000;
  const measures: Measures = {
    ...posture,
    chestLeadMs: leadMs,
    releaseToCatchMs: caught ? (toS - m.releaseS) * 1000 : null,
    fallCm: caught ? freeFall(toS - m.releaseS) * 100 : null,
  };
  return {
    kind: 'rehearsal',
    startS: m.startS,
    topS: m.topS,
    endS: c.endS,
    releaseS: m.releaseS,
    armStartS,
    catchS: caught ? toS : null,
    catchConfidence: caught ? shock.confidence : 0,
    holdS: Math.max(0, Math.min(m.releaseS, armStartS ?? m.releaseS) - m.topS),
    measures,
    flags: [
      ...signalFlags(w, m.startS, toS, measures),
      ...catchFlags(caught, shock),
      ...(leadMs !== null && Math.abs(leadMs) < SWING.togetherMs ? (['together'] as const) : []),
    ],
  };
}

/** Lowering the club calmly from a hold: chest and arm take their time to the fastest point. */
function isCalm(w: SwingWindow, c: SwingCandidate, m: Moments): boolean {
  const from = indexAt(w.timeS, c.leftTopS - 0.15);
  const end = indexAt(w.timeS, c.endS);
  const speed = w.signals.map((s) => Math.max(s.chestSpeed, s.armSpeed));
  const peak = indexOfMax(speed, from, end);
  const start = onsetTime(w.timeS, speed, peak, indexAt(w.timeS, m.topS)) ?? m.releaseS;
  return (w.timeS[peak] ?? 0) - Math.min(start, m.releaseS) > SWING.quickRiseS;
}

/**
 * Start of the arm's own movement, s. With the headings a few degrees apart a part of the chest's
 * movement seems to be the arm's: only what goes the way the arm will go counts, and its first part not.
 */
function armStart(w: SwingWindow, c: SwingCandidate): number | null {
  const from = indexAt(w.timeS, c.leftTopS - 0.15);
  const end = indexAt(w.timeS, Math.min(c.endS, c.leftTopS + SWING.landedS));
  const speed = smooth(w.relativeRate.map(norm));
  const peak = firstPeak(speed, from, indexOfMax(speed, from, end));
  const way = normalise(w.relativeRate[peak] ?? ZERO);
  if (way === null) return null;
  const along = smooth(w.relativeRate.map((r) => Math.max(0, dot(r, way))));
  return onsetTime(w.timeS, along, peak, indexAt(w.timeS, (c.holdFromS ?? 0) + 0.1), OVER_LEAKAGE);
}

function signalFlags(
  w: SwingWindow,
  fromS: number,
  toS: number,
  measures: Measures,
): RepetitionFlag[] {
  // A gap is marked on the first frame after it, so the frame after `toS` counts: what seems to end there may go on.
  const inside = w.frames.filter(
    (f, i) => f.timeS >= fromS && (w.frames[i - 1]?.timeS ?? -Infinity) <= toS,
  );
  return [
    ...(inside.some((f) => f.gap) ? (['gap'] as const) : []),
    ...(inside.some((f) => f.saturated) ? (['saturated'] as const) : []),
    ...(measures.externalRotationTopDeg === null ? (['elevation-out-of-range'] as const) : []),
  ];
}

function catchFlags(caught: boolean, shock: Shock | null): RepetitionFlag[] {
  if (caught) return [];
  return shock === null ? ['catch-not-detected', 'catch-assumed'] : ['landed', 'catch-assumed'];
}
