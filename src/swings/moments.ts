import { ZERO, dot, norm, normalise } from '../math/vec3.ts';
import type { SwingCandidate } from './detector.ts';
import { OVER_LEAKAGE, onsetTime } from './onset.ts';
import { SWING } from './swingLimits.ts';
import { type SwingWindow, indexAt, indexOfMax, smooth } from './window.ts';

/** The instants of one swing, session s. */
export interface Moments {
  readonly startS: number;
  readonly topS: number;
  readonly releaseS: number;
  readonly holdS: number;
  /** Index and size of the fastest turn toward the target. */
  readonly peakIndex: number;
  readonly peakTurnRate: number;
}

export function momentsOf(w: SwingWindow, c: SwingCandidate): Moments {
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
  const topS = arrivalAtTop(w, startS, holdIndex, indexAt(w.timeS, releaseS)) ?? c.holdFromS;
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
  const first = indexAt(w.timeS, c.startS - SWING.slowlyStillS);
  // not the end of the swing before
  const peak = indexOfMax(w.chestSpeed, indexAt(w.timeS, c.startS), topIndex);
  return onsetTime(w.timeS, w.chestSpeed, peak, first) ?? c.startS;
}

/** End of the backswing: the onset model on the reversed movement. */
function arrivalAtTop(
  w: SwingWindow,
  startS: number,
  holdIndex: number,
  releaseIndex: number,
): number | null {
  const first = indexAt(w.timeS, startS);
  const peak = indexOfMax(w.chestSpeed, first, holdIndex);
  const settledS = (w.timeS[holdIndex] ?? 0) + SWING.slowlyStillS;
  const end = Math.min(indexAt(w.timeS, settledS), Math.max(holdIndex, releaseIndex));
  const back = w.timeS.slice(peak, end + 1).map((t) => -t);
  const speed = w.chestSpeed.slice(peak, end + 1);
  const t = onsetTime(back.reverse(), speed.reverse(), speed.length - 1, 0);
  return t === null ? null : -t;
}

/** Lowering the club calmly from a hold: chest and arm take their time to the fastest point. */
export function isCalm(w: SwingWindow, c: SwingCandidate, m: Moments): boolean {
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
export function armStart(w: SwingWindow, c: SwingCandidate, topS: number): number | null {
  const from = indexAt(w.timeS, c.leftTopS - 0.15);
  const end = indexAt(w.timeS, Math.min(c.endS, c.leftTopS + SWING.landedS));
  const speed = smooth(w.relativeRate.map(norm));
  const peak = firstPeak(speed, from, indexOfMax(speed, from, end));
  const way = normalise(w.relativeRate[peak] ?? ZERO);
  if (way === null) return null;
  const along = smooth(w.relativeRate.map((r) => Math.max(0, dot(r, way))));
  const earliest = c.holdFromS === null ? topS : c.holdFromS + 0.1;
  return onsetTime(w.timeS, along, peak, indexAt(w.timeS, earliest), OVER_LEAKAGE);
}
