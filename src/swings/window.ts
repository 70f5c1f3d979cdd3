import { type BodyFrame } from '../body/segments.ts';
import { wrapDeg } from '../math/angle.ts';
import { slerp } from '../math/quat.ts';
import { type Vec3, lerp } from '../math/vec3.ts';
import { relativeRate, signalsOf, type SwingSignals } from './signals.ts';

/** One swing's frames with the signals of the batch analysis, index by index. */
export interface SwingWindow {
  readonly frames: readonly BodyFrame[];
  readonly timeS: readonly number[];
  readonly signals: readonly SwingSignals[];
  /** deg/s, smoothed without delay. */
  readonly chestSpeed: readonly number[];
  /** Of the arm against the chest, deg/s. */
  readonly relativeRate: readonly Vec3[];
  /** Rate of the turn angle (about the vertical), deg/s, toward the target +. */
  readonly headingRate: readonly number[];
}

export function swingWindow(frames: readonly BodyFrame[]): SwingWindow {
  const signals = frames.map(signalsOf);
  return {
    frames,
    signals,
    timeS: frames.map((f) => f.timeS),
    chestSpeed: smooth(signals.map((s) => s.chestSpeed)),
    relativeRate: frames.map(relativeRate),
    headingRate: signals.map((_, i) => slope(signals, i)),
  };
}

/** Central difference of the turn. */
function slope(signals: readonly SwingSignals[], i: number): number {
  const before = signals[Math.max(0, i - 1)];
  const after = signals[Math.min(signals.length - 1, i + 1)];
  const dt = before && after ? after.timeS - before.timeS : 0;
  return before && after && dt > 0 ? wrapDeg(after.turnDeg - before.turnDeg) / dt : 0;
}

/** Symmetric 1-2-1 mean: no delay, halves the noise of single samples. */
export const smooth = (v: readonly number[]): number[] =>
  v.map((x, i) => ((v[i - 1] ?? x) + 2 * x + (v[i + 1] ?? x)) / 4);

/** First index at or after a time. */
export function indexAt(timeS: readonly number[], t: number): number {
  let low = 0;
  let high = timeS.length;
  while (low < high) {
    const mid = (low + high) >> 1;
    if ((timeS[mid] ?? 0) < t) low = mid + 1;
    else high = mid;
  }
  return Math.min(low, timeS.length - 1);
}

/** Index of the largest value in [from, to]. */
export function indexOfMax(values: readonly number[], from: number, to: number): number {
  let best = from;
  for (let i = from; i <= to && i < values.length; i++)
    if ((values[i] ?? -Infinity) > (values[best] ?? -Infinity)) best = i;
  return best;
}

/** The body at any time inside the window, interpolated. @throws RangeError for a window without frames */
export function frameAt(w: SwingWindow, t: number): BodyFrame {
  const i = indexAt(w.timeS, t);
  const after = w.frames[i];
  const before = w.frames[Math.max(0, i - 1)];
  if (!after || !before) throw new RangeError('a swing without frames');
  const span = after.timeS - before.timeS;
  const k = span > 0 ? Math.min(1, Math.max(0, (t - before.timeS) / span)) : 1;
  return {
    ...after,
    timeS: t,
    thorax: slerp(before.thorax, after.thorax, k),
    humerus: slerp(before.humerus, after.humerus, k),
    thoraxRate: lerp(before.thoraxRate, after.thoraxRate, k),
    humerusRate: lerp(before.humerusRate, after.humerusRate, k),
  };
}
