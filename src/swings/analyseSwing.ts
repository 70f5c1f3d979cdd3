import type { BodyFrame } from '../body/segments.ts';
import { freeFall } from '../math/gravity.ts';
import type { ClubForce } from './clubFall.ts';
import { flightFromBody, flightFromClub } from './clubFlight.ts';
import type { SwingCandidate } from './detector.ts';
import { postureMeasures } from './measures.ts';
import { type Moments, armStart, isCalm, momentsOf } from './moments.ts';
import type { Ball, Measures, PracticeSwing, Rehearsal, RepetitionFlag } from './repetition.ts';
import { type Shock, type ShockSample, strongestShock } from './shock.ts';
import { SWING } from './swingLimits.ts';
import { type SwingWindow, indexAt, indexOfMax, swingWindow } from './window.ts';

type Unnumbered<T> = Omit<T, 'index'>;
export type AnalysedSwing = Unnumbered<Rehearsal> | Unnumbered<Ball> | Unnumbered<PracticeSwing>;

/** What the sensors told around one candidate. */
export interface SwingData {
  /** From before the backswing to the end of the movement. */
  readonly frames: readonly BodyFrame[];
  /** The arm sensor's shock signal over the same time. */
  readonly shocks: readonly ShockSample[];
  /** Force at the club; empty without a third sensor. */
  readonly club: readonly ClubForce[];
}

/**
 * Batch analysis of one closed candidate.
 * @returns the repetition without its number, or `null` where the movement was none
 */
export function analyseSwing(data: SwingData, candidate: SwingCandidate): AnalysedSwing | null {
  if (data.frames.length < 20) return null;
  const w = swingWindow(data.frames);
  const m = momentsOf(w, candidate);
  if (isFullSwing(w, m)) {
    const impact = ballImpact(w, data.shocks, m);
    // who holds at the top and then hits has hit a ball; who only swings on has rehearsed and missed
    if (impact !== null || m.holdS < SWING.shortestHoldS) return fullSwing(w, impact, candidate, m);
  }
  if (m.holdS < SWING.shortestHoldS || isCalm(w, candidate, m)) return null;
  return rehearsal(w, data, candidate, m);
}

function isFullSwing(w: SwingWindow, m: Moments): boolean {
  const through = m.holdS < SWING.shortestHoldS ? SWING.throughDeg : SWING.throughAfterHoldDeg;
  return (
    m.peakTurnRate >= SWING.fullSwingDegPerS &&
    w.signals.some((s, i) => i >= m.peakIndex && s.turnDeg >= through)
  );
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
  data: SwingData,
  c: SwingCandidate,
  m: Moments,
): AnalysedSwing | null {
  const armStartS = armStart(w, c);
  const flight =
    flightFromClub(m.releaseS, c.endS, data.club) ??
    flightFromBody(m.releaseS, armStartS, data.shocks);
  const { releaseS, catchS } = flight;
  const toS = catchS ?? releaseS + SWING.assumedCatchS;
  const posture = postureMeasures(w, releaseS, toS);
  if (posture === null) return null;
  const leadMs = armStartS === null ? null : (armStartS - m.releaseS) * 1000;
  const measures: Measures = {
    ...posture,
    chestLeadMs: leadMs,
    releaseToCatchMs: catchS === null ? null : (catchS - releaseS) * 1000,
    fallCm: catchS === null ? null : freeFall(catchS - releaseS) * 100,
  };
  const together = leadMs !== null && Math.abs(leadMs) < SWING.togetherMs;
  return {
    kind: 'rehearsal',
    startS: m.startS,
    topS: m.topS,
    endS: c.endS,
    releaseS,
    armStartS,
    catchS,
    catchConfidence: flight.confidence,
    holdS: Math.max(0, Math.min(releaseS, m.releaseS, armStartS ?? m.releaseS) - m.topS),
    measures,
    flags: [
      ...signalFlags(w, m.startS, toS, measures),
      ...flight.flags,
      ...(together ? (['together'] as const) : []),
    ],
  };
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
