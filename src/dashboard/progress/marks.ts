import type { CoursePoint } from './course.ts';

export interface Scales {
  readonly x: (ms: number) => number;
  readonly y: (value: number) => number;
}

/** Values of fewer repetitions than this are drawn open. */
export const FEW = 3;

const n1 = (value: number): string => value.toFixed(1);

/** Half a mark's size, px: smaller where many sessions share the width. */
const LARGEST = 4;
const SMALLEST = 1.6;

export const markSize = (width: number, sessions: number): number =>
  Math.min(LARGEST, Math.max(SMALLEST, (0.8 * width) / Math.max(1, sessions)));

const SHAPES = {
  circle: (x: number, y: number, r: number): string =>
    `M${n1(x - r)} ${n1(y)}a${n1(r)} ${n1(r)} 0 1 0 ${n1(2 * r)} 0a${n1(r)} ${n1(r)} 0 1 0 ${n1(-2 * r)} 0`,
  triangle: (x: number, y: number, r: number): string =>
    `M${n1(x)} ${n1(y - 1.25 * r)}l${n1(1.25 * r)} ${n1(2.25 * r)}h${n1(-2.5 * r)}Z`,
  diamond: (x: number, y: number, r: number): string =>
    `M${n1(x)} ${n1(y - 1.5 * r)}l${n1(1.5 * r)} ${n1(1.5 * r)}l${n1(-1.5 * r)} ${n1(1.5 * r)}l${n1(-1.5 * r)} ${n1(-1.5 * r)}Z`,
} as const;
export type MarkShape = keyof typeof SHAPES;

/** Many marks as one path: a course of years stays light. */
export const marksPath = (
  points: readonly CoursePoint[],
  shape: MarkShape,
  { x, y }: Scales,
  size = LARGEST,
): string => points.map((p) => SHAPES[shape](x(p.atMs), y(p.spread.median), size)).join('');

/** Upright bars from the lower to the upper quartile. */
export const quartilesPath = (points: readonly CoursePoint[], { x, y }: Scales): string =>
  points
    .filter((p) => p.spread.high > p.spread.low)
    .map((p) => `M${n1(x(p.atMs))} ${n1(y(p.spread.low))}V${n1(y(p.spread.high))}`)
    .join('');

export const linePath = (points: readonly CoursePoint[], { x, y }: Scales): string =>
  points.map((p, i) => `${i === 0 ? 'M' : 'L'}${n1(x(p.atMs))} ${n1(y(p.spread.median))}`).join('');

export const markAt = (shape: MarkShape, x: number, y: number): string =>
  SHAPES[shape](x, y, LARGEST);

/** Index of the place nearest to `x`; the places ascend. */
export function nearest(places: readonly number[], x: number): number {
  let best = 0;
  places.forEach((place, i) => {
    if (Math.abs(place - x) < Math.abs((places[best] ?? Infinity) - x)) best = i;
  });
  return best;
}
