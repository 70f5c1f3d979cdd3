import type { CoursePoint } from './course.ts';

export interface Scales {
  readonly x: (ms: number) => number;
  readonly y: (value: number) => number;
}

/** Values of fewer repetitions than this are drawn open. */
export const FEW = 3;

const n1 = (value: number): string => value.toFixed(1);

const SHAPES = {
  circle: (x: number, y: number): string => `M${n1(x - 4)} ${n1(y)}a4 4 0 1 0 8 0a4 4 0 1 0 -8 0`,
  triangle: (x: number, y: number): string => `M${n1(x)} ${n1(y - 5)}l5 9h-10Z`,
  diamond: (x: number, y: number): string => `M${n1(x)} ${n1(y - 6)}l6 6l-6 6l-6 -6Z`,
} as const;
export type MarkShape = keyof typeof SHAPES;

/** Many marks as one path: a course of years stays light. */
export const marksPath = (
  points: readonly CoursePoint[],
  shape: MarkShape,
  { x, y }: Scales,
): string => points.map((p) => SHAPES[shape](x(p.atMs), y(p.spread.median))).join('');

/** Upright bars from the lower to the upper quartile. */
export const quartilesPath = (points: readonly CoursePoint[], { x, y }: Scales): string =>
  points
    .filter((p) => p.spread.high > p.spread.low)
    .map((p) => `M${n1(x(p.atMs))} ${n1(y(p.spread.low))}V${n1(y(p.spread.high))}`)
    .join('');

export const linePath = (points: readonly CoursePoint[], { x, y }: Scales): string =>
  points.map((p, i) => `${i === 0 ? 'M' : 'L'}${n1(x(p.atMs))} ${n1(y(p.spread.median))}`).join('');

export const markAt = (shape: MarkShape, x: number, y: number): string => SHAPES[shape](x, y);

/** Index of the place nearest to `x`; the places ascend. */
export function nearest(places: readonly number[], x: number): number {
  let best = 0;
  places.forEach((place, i) => {
    if (Math.abs(place - x) < Math.abs((places[best] ?? Infinity) - x)) best = i;
  });
  return best;
}
