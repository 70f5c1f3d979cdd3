/** One sensor's dynamic acceleration over time: norm less rest, m/s^2. */
export interface TapTrace {
  readonly timeS: readonly number[];
  readonly norm: readonly number[];
}

export type TapSync =
  | {
      readonly ok: true;
      /** Second sensor late against the first, ms. */
      readonly offsetMs: number;
      /** Taps seen by both. */
      readonly taps: number;
      /** Of the aligned signals, 0..1. */
      readonly correlation: number;
    }
  | { readonly ok: false; readonly reason: 'too-few-taps' | 'unlike' | 'too-short' };

const STEP_S = 0.001;
const MOST_LAG_S = 0.08;
const TAP = 6;
const APART_S = 0.15;
const TAPS_NEEDED = 3;
const LIKE = 0.6;

/** Mean of a trace, subtracted; interpolated on even steps. */
function even(trace: TapTrace, fromS: number, count: number): Float64Array {
  const out = new Float64Array(count);
  let i = 0;
  for (let k = 0; k < count; k++) {
    const t = fromS + k * STEP_S;
    while (i < trace.timeS.length - 2 && (trace.timeS[i + 1] ?? Infinity) < t) i++;
    const [t0 = t, t1 = t] = [trace.timeS[i], trace.timeS[i + 1]];
    const [a = 0, b = 0] = [trace.norm[i], trace.norm[i + 1]];
    out[k] = t1 > t0 ? a + (b - a) * Math.min(1, Math.max(0, (t - t0) / (t1 - t0))) : a;
  }
  const mean = out.reduce((sum, v) => sum + v, 0) / Math.max(1, count);
  return out.map((v) => v - mean);
}

/** Times of the taps: peaks apart from each other. */
function tapTimes({ timeS, norm }: TapTrace): number[] {
  const taps: number[] = [];
  for (let i = 1; i < norm.length - 1; i++) {
    const [before = 0, here = 0, after = 0] = [norm[i - 1], norm[i], norm[i + 1]];
    const t = timeS[i] ?? 0;
    if (here < TAP || here < before || here < after) continue;
    if (t - (taps.at(-1) ?? -Infinity) >= APART_S) taps.push(t);
  }
  return taps;
}

function correlationAt(a: Float64Array, b: Float64Array, lag: number): number {
  let [ab, aa, bb] = [0, 0, 0];
  const from = Math.max(0, -lag);
  const to = Math.min(a.length, b.length - lag);
  for (let i = from; i < to; i++) {
    const [x = 0, y = 0] = [a[i], b[i + lag]];
    ab += x * y;
    aa += x * x;
    bb += y * y;
  }
  return aa > 0 && bb > 0 ? ab / Math.sqrt(aa * bb) : 0;
}

/** The lag of the largest correlation, refined by a parabola through its neighbours, in steps. */
function bestLag(a: Float64Array, b: Float64Array): { lag: number; correlation: number } {
  const most = Math.round(MOST_LAG_S / STEP_S);
  const all = Array.from({ length: 2 * most + 1 }, (_, k) => correlationAt(a, b, k - most));
  const k = all.reduce((best, v, i) => (v > (all[best] ?? -1) ? i : best), 0);
  const [left = 0, peak = 0, right = 0] = [all[k - 1] ?? all[k], all[k], all[k + 1] ?? all[k]];
  const bend = left - 2 * peak + right;
  const shift = bend < 0 ? (0.5 * (left - right)) / bend : 0;
  return { lag: k - most + shift, correlation: peak };
}

/**
 * Both sensors are tapped together three times: how far apart do their clocks put the taps?
 * Cross-correlation at 1 ms; two sensors of one kind at 100 Hz can be told apart to about 0.5 ms.
 * @param a, b in order of time, about the same few seconds
 */
export function tapSync(a: TapTrace, b: TapTrace): TapSync {
  const fromS = Math.max(a.timeS[0] ?? Infinity, b.timeS[0] ?? Infinity);
  const toS = Math.min(a.timeS.at(-1) ?? -Infinity, b.timeS.at(-1) ?? -Infinity);
  if (!(toS - fromS > 1)) return { ok: false, reason: 'too-short' };
  const taps = Math.min(tapTimes(a).length, tapTimes(b).length);
  if (taps < TAPS_NEEDED) return { ok: false, reason: 'too-few-taps' };
  const count = Math.min(20_000, Math.floor((toS - fromS) / STEP_S));
  const { lag, correlation } = bestLag(even(a, fromS, count), even(b, fromS, count));
  if (correlation < LIKE) return { ok: false, reason: 'unlike' };
  return { ok: true, offsetMs: lag * STEP_S * 1000, taps, correlation };
}
