import type { BodyFrame } from '../body/segments.ts';
import { freeFall } from '../math/gravity.ts';
import type { ClubForce } from './clubFall.ts';
import { flightFromBody, flightFromClub } from './clubFlight.ts';
import type { SwingCandidate } from './detector.ts';
import { postureMeasures } from './measures.ts';
import { type Moments, armStart, isCalm, momentsOf } from './moments.ts';
import type { Ball, Measures, PracticeSwing, Rehearsal, RepetitionFlag } from './repetition.ts';
import { type Shock, type ShockSample, longestSilence, strongestShock } from './shock.ts';
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

/** One movement, measured as what it was taken for, and as what a person may say that it was. */
export interface SwingReadings {
  readonly detected: AnalysedSwing;
  /** As the two other kinds, each between its own instants. */
  readonly others: readonly AnalysedSwing[];
}

const KINDS = ['rehearsal', 'ball', 'practiceSwing'] as const;
type Kind = (typeof KINDS)[number];

/**
 * Batch analysis of one closed candidate.
 * @returns the repetition without its number, or `null` where the movement was none
 */
export function analyseSwing(data: SwingData, candidate: SwingCandidate): SwingReadings | null {
  if (data.frames.length < 20) return null;
  const w = swingWindow(data.frames);
  const m = momentsOf(w, candidate);
  const impact = impactOf(w, data.shocks, m);
  const kind = kindOf(w, candidate, m, impact);
  if (kind === null) return null;
  const as = (k: Kind): AnalysedSwing =>
    k === 'rehearsal'
      ? // where it was none, its blows may be those of a fast swing, as strong as a soft catch
        rehearsal(w, data, candidate, m, kind === 'rehearsal' ? 0 : SWING.ballShock)
      : fullSwing(w, k, k === 'ball' ? impact : null, candidate, m);
  const unseen = impact === null && isFullSwing(w, m) && isBlind(w, data.shocks, m);
  const detected = unseen ? withFlag(as(kind), 'impact-not-seen') : as(kind);
  return { detected, others: KINDS.filter((k) => k !== kind).map(as) };
}

const withFlag = (swing: AnalysedSwing, flag: RepetitionFlag): AnalysedSwing => ({
  ...swing,
  flags: [...swing.flags, flag],
});

function kindOf(w: SwingWindow, c: SwingCandidate, m: Moments, impact: Shock | null): Kind | null {
  const held = m.holdS >= SWING.shortestHoldS;
  if (isFullSwing(w, m)) {
    // who holds at the top and then hits has hit a ball; who only swings on has rehearsed and missed
    if (impact !== null) return 'ball';
    if (!held) return 'practiceSwing';
  }
  return held && !isCalm(w, c, m) ? 'rehearsal' : null;
}

function isFullSwing(w: SwingWindow, m: Moments): boolean {
  const through = m.holdS < SWING.shortestHoldS ? SWING.throughDeg : SWING.throughAfterHoldDeg;
  return (
    m.peakTurnRate >= SWING.fullSwingDegPerS &&
    w.signals.some((s, i) => i >= m.peakIndex && s.turnDeg >= through)
  );
}

/** From the top to the delivery. A blow is a ball's own: a practice swing is measured without one. */
function fullSwing(
  w: SwingWindow,
  kind: 'ball' | 'practiceSwing',
  impact: Shock | null,
  c: SwingCandidate,
  m: Moments,
): AnalysedSwing {
  const until = impact === null ? w.timeS.length - 1 : indexAt(w.timeS, impact.timeS);
  const deliveryS = w.timeS[indexOfMax(w.headingRate, indexAt(w.timeS, m.topS), until)] ?? m.topS;
  const posture = postureMeasures(w, m.topS, deliveryS);
  const measures = { ...posture, chestLeadMs: null, releaseToCatchMs: null, fallCm: null };
  const flags = signalFlags(w, m.startS, impact?.timeS ?? deliveryS, measures);
  const { startS, topS } = m;
  const common = { startS, topS, endS: c.endS, measures, deliveryS };
  if (kind === 'practiceSwing') return { kind, ...common, flags };
  return impact === null
    ? { kind, ...common, impactS: null, flags: [...flags, 'impact-not-detected'] }
    : { kind, ...common, impactS: impact.timeS, flags };
}

/**
 * A blow as strong as a ball's, near the fastest turn. Also where a person says that there was a ball: the noise of a
 * fast swing has weaker ones, and a made-up time is worse than none.
 */
function impactOf(w: SwingWindow, shocks: readonly ShockSample[], m: Moments): Shock | null {
  const shock = strongestShock(shocks, ...blowSpan(w, m));
  return shock !== null && shock.size >= SWING.ballShock ? shock : null;
}

/** Where the blow of a ball would be, session s. */
function blowSpan(w: SwingWindow, m: Moments): [fromS: number, toS: number] {
  const peakS = w.timeS[m.peakIndex] ?? m.topS;
  return [peakS - SWING.impactBeforePeakS, peakS + SWING.impactAfterPeakS];
}

/** Readings of the arm are missing there, too many to say that there was none. */
function isBlind(w: SwingWindow, shocks: readonly ShockSample[], m: Moments): boolean {
  const [fromS, toS] = blowSpan(w, m);
  return longestSilence(shocks, fromS, Math.min(toS, w.timeS.at(-1) ?? toS)) > SWING.blowS;
}

function rehearsal(
  w: SwingWindow,
  data: SwingData,
  c: SwingCandidate,
  m: Moments,
  leastShock: number,
): AnalysedSwing {
  const armStartS = armStart(w, c, m.topS);
  const flight =
    flightFromClub(m.releaseS, c.endS, data.club) ??
    flightFromBody(m.releaseS, armStartS, data.shocks, leastShock);
  const { releaseS, catchS } = flight;
  const toS = catchS ?? releaseS + SWING.assumedCatchS;
  const posture = postureMeasures(w, releaseS, toS);
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
