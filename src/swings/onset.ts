/**
 * Onset of a movement by the cubic model of Botzer and Karniel 2009: position grows with t^3, so
 * the root of speed is a straight line near the start; its zero crossing is the onset. The line is
 * fitted over a part of the rise, given in shares of the peak speed.
 */
export interface Rise {
  readonly low: number;
  readonly high: number;
  /**
   * In a minimum-jerk movement (Flash & Hogan 1985) the root of speed bends as t (1 - t): the line
   * meets zero too early by this share of the time to the peak. Follows from low and high.
   */
  readonly early: number;
}

/** The published part of the rise. */
export const FROM_REST: Rise = { low: 0.05, high: 0.3, early: 0.025 };
/** For a speed with something else's movement leaking into its start. */
export const OVER_LEAKAGE: Rise = { low: 0.12, high: 0.45, early: 0.058 };

/**
 * @param timeS sample times, s
 * @param speed speed, same length, any unit, >= 0
 * @param peakIndex where the movement is fastest
 * @param fromIndex no earlier than this
 * @returns onset, s, or `null` where no rise can be seen
 */
export function onsetTime(
  timeS: readonly number[],
  speed: readonly number[],
  peakIndex: number,
  fromIndex: number,
  rise: Rise = FROM_REST,
): number | null {
  const peak = speed[peakIndex] ?? 0;
  if (!(peak > 0)) return null;
  const high = lastBelow(speed, peakIndex, fromIndex, rise.high * peak);
  const low = lastBelow(speed, high, fromIndex, rise.low * peak);
  const crossing = rootLineZero(timeS, speed, low + 1, high);
  if (crossing === null) return timeS[Math.max(low, fromIndex)] ?? null;
  const earliest = timeS[Math.max(fromIndex, low - 15)] ?? crossing;
  const latest = timeS[Math.min(high + 1, timeS.length - 1)] ?? crossing;
  const onset = crossing + rise.early * ((timeS[peakIndex] ?? crossing) - crossing);
  return Math.min(latest, Math.max(earliest, onset));
}

/** Last index before `from` at which the speed is below `level`; `stop` where there is none. */
function lastBelow(speed: readonly number[], from: number, stop: number, level: number): number {
  let i = from;
  while (i > stop && (speed[i] ?? 0) > level) i--;
  return i;
}

/** Least-squares line through sqrt(speed); where it crosses zero. */
function rootLineZero(
  timeS: readonly number[],
  speed: readonly number[],
  from: number,
  to: number,
): number | null {
  const n = to - from + 1;
  if (n < 2) return null;
  const t0 = timeS[from] ?? 0;
  let [st, sy, stt, sty] = [0, 0, 0, 0];
  for (let i = from; i <= to; i++) {
    const t = (timeS[i] ?? 0) - t0;
    const y = Math.sqrt(Math.max(0, speed[i] ?? 0));
    st += t;
    sy += y;
    stt += t * t;
    sty += t * y;
  }
  const slope = (n * sty - st * sy) / (n * stt - st * st);
  if (!(slope > 0) || !Number.isFinite(slope)) return null;
  return t0 - (sy - slope * st) / n / slope;
}
