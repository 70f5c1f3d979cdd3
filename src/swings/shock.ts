import { median, medianAbsoluteDeviation } from '../math/stats.ts';
import { type Vec3, norm, vec3 } from '../math/vec3.ts';

/** How far one accelerometer reading is from the parabola through the three before it, halved, m/s^2. */
export interface ShockSample {
  readonly timeS: number;
  readonly size: number;
  /** A reading of the sensor; else one put in where one was lost, which hides what was felt there. */
  readonly seen: boolean;
}

interface TimedAcc {
  readonly timeS: number;
  readonly acc: Vec3;
}

/** The last three readings of the arm sensor, newest first. Plain data. */
export interface ShockState {
  last: TimedAcc[];
}

export const createShock = (): ShockState => ({ last: [] });

/** After an interval over so many times the one before, readings are missing and nothing can be said until three have come. */
const GAP = 2.5;
/** Noise of the even case: weights 1, 3, 3, 1. */
const EVEN_NOISE = Math.sqrt(20);

/**
 * High-pass by extrapolation from the three readings before (even times: the third difference), at the arm sensor's
 * own times: smooth movement leaves almost nothing, a shock stands out in the first sample that holds it. Where one
 * reading is missing the size is taken in units of the noise, which the longer reach makes larger; where more are
 * missing a smooth movement itself would look like a blow, so the size is 0. Mounting does not matter.
 */
export function stepShock(s: ShockState, timeS: number, acc: Vec3, seen = true): ShockSample {
  const [c, b, a] = s.last;
  // a reading that comes twice, or late, says nothing of what is between readings
  if (c !== undefined && timeS <= c.timeS) return { timeS, size: 0, seen };
  const gap = c !== undefined && b !== undefined && timeS - c.timeS > GAP * (c.timeS - b.timeS);
  s.last = [{ timeS, acc }, ...(gap ? [] : s.last.slice(0, 2))];
  if (gap || a === undefined || b === undefined || c === undefined) return { timeS, size: 0, seen };
  return { timeS, size: distance(timeS, acc, a, b, c), seen };
}

/** From the parabola through `a`, `b` and `c` (Lagrange's weights). */
function distance(timeS: number, x: Vec3, a: TimedAcc, b: TimedAcc, c: TimedAcc): number {
  const [ta, tb, tc] = [timeS - a.timeS, timeS - b.timeS, timeS - c.timeS];
  const wa = (tb * tc) / ((a.timeS - b.timeS) * (a.timeS - c.timeS));
  const wb = (ta * tc) / ((b.timeS - a.timeS) * (b.timeS - c.timeS));
  const wc = (ta * tb) / ((c.timeS - a.timeS) * (c.timeS - b.timeS));
  const rest = vec3(
    x.x - wa * a.acc.x - wb * b.acc.x - wc * c.acc.x,
    x.y - wa * a.acc.y - wb * b.acc.y - wc * c.acc.y,
    x.z - wa * a.acc.z - wb * b.acc.z - wc * c.acc.z,
  );
  const noise = Math.sqrt(1 + wa * wa + wb * wb + wc * wc);
  return (norm(rest) * EVEN_NOISE) / noise / 2;
}

export interface Shock {
  /** The last sample before the run: a blow rises from nothing and is seen a little late, s. */
  readonly timeS: number;
  /** m/s^2 of the high-passed acceleration. */
  readonly size: number;
  /** 0..1: how far it stands out. */
  readonly confidence: number;
}

const SHOCK = {
  /** Median absolute deviations of the preceding 0.2 s. */
  deviations: 5,
  baselineS: 0.2,
  /** And so many times the usual size there: hands that stop make a kink, hands that catch a blow. */
  overUsual: 3,
  /** Never below this, m/s^2: over the kinks of a movement and the noise of a consumer sensor ... */
  floor: 0.5,
  /** ... as they are with readings at most so far apart, s; with the square of that they leave more (from simulation, 50-200 Hz). */
  floorPeriodS: 0.01,
  /** The run of a shock begins where this share of its peak is reached. */
  onsetShare: 0.25,
  /** Noise alone reaches less, m/s^2. */
  onsetLeast: 0.32,
} as const;

/** The strongest shock between two times, or `null` where nothing stands out. */
export function strongestShock(
  samples: readonly ShockSample[],
  fromS: number,
  toS: number,
): Shock | null {
  const inside = samples.flatMap((s, i) => (s.timeS >= fromS && s.timeS <= toS ? [i] : []));
  const first = inside[0];
  if (first === undefined) return null;
  const peak = inside.reduce((best, i) => (sizeAt(samples, i) > sizeAt(samples, best) ? i : best));
  const onset = onsetOf(samples, peak, first);
  const size = sizeAt(samples, peak);
  const limit = thresholdBefore(samples, onset);
  if (size <= limit) return null;
  const timeS = samples[onset - 1]?.timeS ?? samples[onset]?.timeS ?? fromS;
  return { timeS, size, confidence: Math.min(1, size / (3 * limit)) };
}

/** The longest time between two times without a reading, s. */
export function longestSilence(
  samples: readonly ShockSample[],
  fromS: number,
  toS: number,
): number {
  const times = samples.flatMap((s) => (s.seen && s.timeS > fromS && s.timeS < toS ? s.timeS : []));
  return Math.max(...[...times, toS].map((t, i) => t - (times[i - 1] ?? fromS)));
}

const sizeAt = (samples: readonly ShockSample[], i: number): number => samples[i]?.size ?? 0;

/** Back from the peak while the run stays strong (one weak sample between is part of a ringing). */
function onsetOf(samples: readonly ShockSample[], peak: number, first: number): number {
  const level = Math.max(SHOCK.onsetLeast, SHOCK.onsetShare * sizeAt(samples, peak));
  const strong = (i: number) => i >= first && sizeAt(samples, i) >= level;
  let i = peak;
  while (strong(i - 1) || strong(i - 2)) i = strong(i - 1) ? i - 1 : i - 2;
  return i;
}

function thresholdBefore(samples: readonly ShockSample[], onset: number): number {
  const end = samples[onset]?.timeS ?? 0;
  const before = samples
    .slice(Math.max(0, onset - 60), onset)
    .filter((s) => s.timeS >= end - SHOCK.baselineS);
  const periodS = (end - (before[0]?.timeS ?? end)) / Math.max(1, before.length);
  const floor = SHOCK.floor * Math.max(1, periodS / SHOCK.floorPeriodS) ** 2;
  const calm = before.map((s) => s.size);
  const centre = median(calm) ?? 0;
  const spread = medianAbsoluteDeviation(calm) ?? 0;
  return Math.max(floor, SHOCK.overUsual * centre, centre + SHOCK.deviations * spread);
}
