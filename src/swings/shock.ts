import { median, medianAbsoluteDeviation } from '../math/stats.ts';
import { type Vec3, norm, vec3 } from '../math/vec3.ts';

/** How far one accelerometer reading is from the line through the two before it, m/s^2. */
export interface ShockSample {
  readonly timeS: number;
  readonly size: number;
}

/** Last two readings of the arm sensor. Plain data. */
export interface ShockState {
  last: Vec3 | null;
  beforeLast: Vec3 | null;
}

export const createShock = (): ShockState => ({ last: null, beforeLast: null });

/**
 * High-pass by second difference, at the arm sensor's own times: smooth movement leaves almost
 * nothing, a shock stands out in the first sample that holds it. Mounting does not matter.
 */
export function stepShock(s: ShockState, timeS: number, acc: Vec3): ShockSample {
  const { last: b, beforeLast: a } = s;
  s.beforeLast = b;
  s.last = acc;
  if (a === null || b === null) return { timeS, size: 0 };
  const d = vec3(acc.x - 2 * b.x + a.x, acc.y - 2 * b.y + a.y, acc.z - 2 * b.z + a.z);
  return { timeS, size: norm(d) / 2 };
}

export interface Shock {
  /** Middle between the last undisturbed and the first disturbed sample, s. */
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
  /** Never below this, m/s^2: a few times the noise of a consumer sensor. */
  floor: 0.45,
  /** The run of a shock begins where this share of its peak is reached. */
  onsetShare: 0.35,
};

/** The strongest shock between two times, or `null` where nothing stands out. */
export function strongestShock(
  samples: readonly ShockSample[],
  fromS: number,
  toS: number,
): Shock | null {
  const inside = samples.flatMap((s, i) => (s.timeS >= fromS && s.timeS <= toS ? [i] : []));
  const peak = inside.reduce(
    (best, i) => ((samples[i]?.size ?? 0) > (samples[best]?.size ?? -1) ? i : best),
    -1,
  );
  const size = samples[peak]?.size ?? 0;
  if (peak < 0) return null;
  const onset = onsetOf(samples, peak, inside[0] ?? peak);
  const limit = thresholdBefore(samples, onset);
  if (size <= limit) return null;
  const before = samples[onset - 1]?.timeS ?? fromS;
  const first = samples[onset]?.timeS ?? fromS;
  return { timeS: (before + first) / 2, size, confidence: Math.min(1, size / (3 * limit)) };
}

/** Back from the peak while the run stays strong (one weak sample between is part of a ringing). */
function onsetOf(samples: readonly ShockSample[], peak: number, first: number): number {
  const level = SHOCK.onsetShare * (samples[peak]?.size ?? 0);
  const strong = (i: number) => i >= first && (samples[i]?.size ?? 0) >= level;
  let i = peak;
  while (strong(i - 1) || strong(i - 2)) i = strong(i - 1) ? i - 1 : i - 2;
  return i;
}

function thresholdBefore(samples: readonly ShockSample[], onset: number): number {
  const end = samples[onset]?.timeS ?? 0;
  const calm = samples
    .slice(Math.max(0, onset - 60), onset)
    .filter((s) => s.timeS >= end - SHOCK.baselineS)
    .map((s) => s.size);
  const centre = median(calm) ?? 0;
  const spread = medianAbsoluteDeviation(calm) ?? 0;
  return Math.max(SHOCK.floor, centre + SHOCK.deviations * spread);
}
