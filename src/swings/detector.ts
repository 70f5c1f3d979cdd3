import type { SwingSignals } from './signals.ts';
import { type StillnessState, createStillness, stepStillness } from './stillness.ts';

/** Limits that say where a swing is; degrees, deg/s, s. Choices of the design, from simulation. */
export const DETECTION = {
  /** The top: turned away at least this far with the arm raised. */
  topTurnDeg: -50,
  topElevationDeg: 35,
  /** Address: still and leaning forward. */
  addressLeanDeg: { low: 12, high: 65 },
  addressTurnDeg: 25,
  /** A movement from the top begins above these speeds. */
  startChest: 25,
  startArm: 40,
  /** It is over when still for this long ... */
  endStillS: 0.08,
  /** ... or this long after its peak, when slower than a quarter of it ... */
  afterPeakS: 0.35,
  /** ... or at last. */
  longestS: 2.2,
  /** Movements of the top that turn or drop less than these are a shift of the hold. */
  shiftDeg: 8,
} as const;

export type SwingPhase = 'waiting' | 'address' | 'backswing' | 'top' | 'released';

/** A movement from the top that has come to its end; the batch analysis says what it was. */
export interface SwingCandidate {
  /** Start of the last still or slow period before the backswing. */
  readonly startS: number;
  /** Since when it was still at the top; `null` where there was no still top. */
  readonly holdFromS: number | null;
  /** About when the movement from the top began. */
  readonly leftTopS: number;
  readonly endS: number;
}

/** Plain data. */
export interface DetectorState {
  phase: SwingPhase;
  stillness: StillnessState;
  /** Last time it was still away from the top. */
  lastStillS: number | null;
  topSinceS: number | null;
  holdFromS: number | null;
  leftTopS: number;
  startS: number;
  peakSpeed: number;
  peakS: number;
  quietS: number | null;
  leftTurnDeg: number;
  leftElevationDeg: number;
}

export const createDetector = (): DetectorState => ({
  phase: 'waiting',
  stillness: createStillness(),
  lastStillS: null,
  topSinceS: null,
  holdFromS: null,
  leftTopS: 0,
  startS: 0,
  peakSpeed: 0,
  peakS: 0,
  quietS: null,
  leftTurnDeg: 0,
  leftElevationDeg: 0,
});

/** Takes one frame's signals; returns a candidate when a movement from the top has just ended. */
export function stepDetector(d: DetectorState, s: SwingSignals): SwingCandidate | null {
  const still = stepStillness(d.stillness, s.timeS, s.chestSpeed, s.armSpeed);
  if (d.phase === 'released') return followRelease(d, s, still);
  if (atTop(s)) waitAtTop(d, s, still);
  else awayFromTop(d, s, still);
  return null;
}

const atTop = (s: SwingSignals): boolean =>
  s.turnDeg <= DETECTION.topTurnDeg && s.elevationDeg >= DETECTION.topElevationDeg;

function awayFromTop(d: DetectorState, s: SwingSignals, still: boolean): void {
  d.topSinceS = null;
  d.holdFromS = null;
  if (still) d.lastStillS = s.timeS;
  const { low, high } = DETECTION.addressLeanDeg;
  const set =
    s.leanDeg >= low && s.leanDeg <= high && Math.abs(s.turnDeg) <= DETECTION.addressTurnDeg;
  if (still) d.phase = set ? 'address' : 'waiting';
  else if (d.phase === 'address' && s.turnDeg < -DETECTION.addressTurnDeg) d.phase = 'backswing';
  else if (d.phase === 'top') d.phase = 'waiting';
}

function waitAtTop(d: DetectorState, s: SwingSignals, still: boolean): void {
  if (d.topSinceS === null) {
    d.topSinceS = s.timeS;
    d.startS = d.lastStillS ?? s.timeS - 2;
  }
  if (still) {
    d.phase = 'top';
    d.holdFromS ??= d.stillness.sinceS;
    return;
  }
  const started =
    s.turnRate > DETECTION.startChest ||
    (d.holdFromS !== null &&
      (s.armSpeed > DETECTION.startArm || s.chestSpeed > DETECTION.startChest));
  if (started) leaveTop(d, s);
  else if (d.phase !== 'top') d.phase = 'backswing';
}

function leaveTop(d: DetectorState, s: SwingSignals): void {
  d.phase = 'released';
  d.leftTopS = s.timeS;
  d.peakSpeed = 0;
  d.peakS = s.timeS;
  d.quietS = null;
  d.leftTurnDeg = s.turnDeg;
  d.leftElevationDeg = s.elevationDeg;
}

function followRelease(d: DetectorState, s: SwingSignals, still: boolean): SwingCandidate | null {
  const speed = Math.max(s.chestSpeed, s.armSpeed);
  if (speed > d.peakSpeed) {
    d.peakSpeed = speed;
    d.peakS = s.timeS;
  }
  d.quietS = speed < 25 ? (d.quietS ?? s.timeS) : null;
  const quiet = d.quietS !== null && s.timeS - d.quietS >= DETECTION.endStillS;
  const slowed = s.timeS - d.peakS >= DETECTION.afterPeakS && speed < 0.25 * d.peakSpeed;
  const long = s.timeS - d.leftTopS > DETECTION.longestS;
  if (!(quiet || slowed || long)) return null;
  return endRelease(d, s, still);
}

function endRelease(d: DetectorState, s: SwingSignals, still: boolean): SwingCandidate | null {
  const moved =
    Math.abs(s.turnDeg - d.leftTurnDeg) >= DETECTION.shiftDeg ||
    Math.abs(s.elevationDeg - d.leftElevationDeg) >= DETECTION.shiftDeg;
  if (!moved && atTop(s)) {
    // the hold was shifted, not left
    d.phase = 'top';
    if (!still) d.holdFromS = null;
    return null;
  }
  const candidate: SwingCandidate = {
    startS: d.startS,
    holdFromS: d.holdFromS,
    leftTopS: d.leftTopS,
    endS: s.timeS,
  };
  d.phase = 'waiting';
  d.topSinceS = null;
  d.holdFromS = null;
  d.lastStillS = s.timeS;
  return candidate;
}
