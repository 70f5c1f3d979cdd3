/** A range of values that a drawing spans; low < high. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

type Column = readonly (number | null)[];

/** Rounded outwards to whole `step`s, at least `least` wide; around zero where there is no value. */
export function rangeOf(columns: readonly Column[], step: number, least: number): Range {
  let low = Infinity;
  let high = -Infinity;
  for (const column of columns)
    for (const value of column) {
      if (value === null) continue;
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
  if (low > high) [low, high] = [0, 0];
  const missing = Math.max(0, least - (high - low)) / 2;
  return {
    low: Math.floor((low - missing) / step) * step,
    high: Math.ceil((high + missing) / step) * step,
  };
}

/** Share of the range, 0 at its low end and 1 at its high end. */
export const shareOf = ({ low, high }: Range, value: number): number =>
  (value - low) / (high - low);

/** Steps of an axis: in tens, and for angles. */
export const ROUND_STEPS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 25, 50, 100, 200, 250, 500, 1000];
export const ANGLE_STEPS = [1, 2, 5, 10, 20, 30, 45, 90, 180];

/** A few round values inside the range, for its axis. */
export function ticksOf(
  { low, high }: Range,
  most: number,
  steps: readonly number[] = ROUND_STEPS,
): readonly number[] {
  const step = steps.find((s) => (high - low) / s <= most) ?? high - low;
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, i) =>
    Number(((first + i) * step).toFixed(6)),
  );
}
