import type { Target } from './plan.ts';

/**
 * One rule for every number that stands beside a target, a verdict or a difference, on every screen, print and file:
 * it is rounded to what its accuracy allows, with more decimals where rounding would carry it over an end of the
 * target; where two decimals more do not suffice, it is rounded to its own side.
 */
const MORE_DECIMALS = 2;
/** A double has no more to say. */
const MOST_DECIMALS = 15;

/** Below (-1), inside (0) or above (1) a target; its ends are inside. */
const sideOf = (value: number, { min, max }: Target): number =>
  value < (min ?? -Infinity) ? -1 : value > (max ?? Infinity) ? 1 : 0;

/**
 * The number as a decimal with a point and a hyphen. Read back it lies on the same side of every one of the
 * targets as the value, and of two values the greater never reads as the less.
 * @param decimals that its accuracy allows; -1 rounds to tens
 */
export function shownNumber(
  value: number,
  decimals: number,
  targets: readonly (Target | undefined)[] = [],
): string {
  const bands = targets.filter((band) => band !== undefined);
  const agrees = (text: string): boolean =>
    bands.every((band) => sideOf(Number(text), band) === sideOf(value, band));
  for (let d = decimals; d <= decimals + MORE_DECIMALS; d++) {
    const text = rounded(value, d);
    if (agrees(text)) return text;
  }
  for (let d = decimals + MORE_DECIMALS; d <= MOST_DECIMALS; d++) {
    const found = [-1, 1].map((steps) => rounded(value, d, steps)).find(agrees);
    if (found !== undefined) return found;
  }
  return String(value);
}

/** Rounded half away from zero, then moved by whole steps of the last decimal; never "-0". */
function rounded(value: number, decimals: number, steps = 0): string {
  const text =
    decimals < 0
      ? (Math.sign(value) * Math.round(Math.abs(value) * 10 ** decimals) * 10 ** -decimals).toFixed(
          0,
        )
      : value.toFixed(decimals);
  const moved =
    steps === 0 ? text : (Number(text) + steps * 10 ** -decimals).toFixed(Math.max(0, decimals));
  return Number(moved) === 0 ? moved.replace('-', '') : moved;
}

/** Digits behind the point. */
const decimalsOf = (text: string): number => (text.split('.')[1] ?? '').length;

/** `later` minus `earlier`, both as they are shown: whoever subtracts them finds the same. */
export const shownDifference = (later: string, earlier: string): string =>
  rounded(Number(later) - Number(earlier), Math.max(decimalsOf(later), decimalsOf(earlier)));

/** Two values, their difference and its interval as they are shown. */
export interface ShownComparison {
  /** Decimals of the two values; for what else stands beside them. */
  readonly decimals: number;
  readonly earlier: string;
  readonly later: string;
  readonly difference: string;
  readonly interval: { readonly low: string; readonly high: string } | null;
}

/** Beyond this an interval is narrower than anything that is measured. */
const COMPARISON_MORE = 4;

/**
 * The difference is that of the shown values. Decimals are added until it lies in its interval and on the same side of
 * `sure` as the true one; the ends of the interval are rounded outward, on their own side of zero. So whoever reads the
 * numbers comes to the same words: whether there is a difference, and whether it is more than what one value is sure to.
 * @param decimals to begin with
 * @param sure what one value is sure to, in the same unit
 */
export function shownComparison(
  values: { readonly earlier: number; readonly later: number },
  interval: { readonly low: number; readonly high: number } | null,
  decimals: number,
  sure = Infinity,
): ShownComparison {
  const small: Target = { min: -sure, max: sure };
  const exact = values.later - values.earlier;
  const holds = (shown: number): boolean =>
    sideOf(shown, small) === sideOf(exact, small) &&
    (interval === null || sideOf(shown, { min: interval.low, max: interval.high }) === 0);
  const at = (d: number): ShownComparison => {
    const [earlier, later] = [rounded(values.earlier, d), rounded(values.later, d)];
    const difference = shownDifference(later, earlier);
    return {
      decimals: d,
      earlier,
      later,
      difference,
      interval: interval && outward(interval, difference, d),
    };
  };
  for (let d = decimals; d < decimals + COMPARISON_MORE; d++)
    if (holds(Number(at(d).difference))) return at(d);
  return at(decimals + COMPARISON_MORE);
}

function outward(
  { low, high }: { readonly low: number; readonly high: number },
  difference: string,
  decimals: number,
): { readonly low: string; readonly high: string } {
  const down = awayFrom(low, decimals, -1);
  const up = awayFrom(high, decimals, 1);
  return {
    low: Number(down) > Number(difference) ? difference : down,
    high: Number(up) < Number(difference) ? difference : up,
  };
}

/** An end of an interval, rounded outward where that does not carry it to zero. */
function awayFrom(end: number, decimals: number, way: 1 | -1): string {
  const near = rounded(end, decimals);
  const far = way * Number(near) < way * end ? rounded(end, decimals, way) : near;
  const zero: Target = way < 0 ? { max: 0 } : { min: 0 };
  return sideOf(Number(far), zero) === sideOf(end, zero) ? far : shownNumber(end, decimals, [zero]);
}
