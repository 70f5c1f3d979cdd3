/** Linear-interpolated percentile of the finite values, `p` in 0..1; `null` where there is none. */
export function percentile(values: readonly number[], p: number): number | null {
  const s = values.filter(Number.isFinite).sort((a, b) => a - b);
  if (s.length === 0) return null;
  const at = (s.length - 1) * p;
  const low = Math.floor(at);
  const a = s[low] ?? 0;
  const b = s[Math.min(low + 1, s.length - 1)] ?? a;
  return a + (b - a) * (at - low);
}

export const median = (values: readonly number[]): number | null => percentile(values, 0.5);

export function mean(values: readonly number[]): number | null {
  if (values.length === 0) return null;
  return values.reduce((a, b) => a + b, 0) / values.length;
}

/** Sample variance (over n - 1); `null` for fewer than two values. */
export function variance(values: readonly number[]): number | null {
  const m = mean(values);
  if (m === null || values.length < 2) return null;
  return values.reduce((sum, v) => sum + (v - m) ** 2, 0) / (values.length - 1);
}

/** Root mean square; `null` where there is no value. */
export function rootMeanSquare(values: readonly number[]): number | null {
  if (values.length === 0) return null;
  return Math.sqrt(values.reduce((a, b) => a + b * b, 0) / values.length);
}

/** Median absolute deviation from the median; `null` where there is no value. */
export function medianAbsoluteDeviation(values: readonly number[]): number | null {
  const m = median(values);
  return m === null ? null : median(values.map((v) => Math.abs(v - m)));
}
