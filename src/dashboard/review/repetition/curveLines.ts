import type { RepetitionCurves } from '../../../streaming/sessionsContract.ts';
import { type Range, rangeOf } from '../plot/scale.ts';

/** The columns that are drawn, uppermost first. */
export const CURVES = [
  'flexionDeg',
  'turnDeg',
  'leanDeg',
  'elevationDeg',
  'keptRotationDeg',
] as const;
export type CurveName = (typeof CURVES)[number];

/** One repetition's curves and the session s that is their zero. */
export interface Aligned {
  readonly curves: RepetitionCurves;
  readonly alignS: number;
}

/** s from the alignment; the union of all. */
export const timeRange = (all: readonly Aligned[]): Range =>
  rangeOf(
    all.map(({ curves, alignS }) => [
      (curves.timeS[0] ?? alignS) - alignS,
      (curves.timeS.at(-1) ?? alignS) - alignS,
    ]),
    0.1,
    1,
  );

/** Degrees; wide enough for all, and never so narrow that noise looks like movement. */
export const valueRange = (all: readonly Aligned[], name: CurveName): Range =>
  rangeOf(
    all.map(({ curves }) => curves[name]),
    10,
    40,
  );

/** The value at `timeS` (session s), of the nearest instant within 30 ms; `null` where there is none. */
export function valueAt(curves: RepetitionCurves, name: CurveName, timeS: number): number | null {
  const next = curves.timeS.findIndex((t) => t >= timeS);
  const at = next < 0 ? curves.timeS.length - 1 : next;
  const [a, b] = [curves.timeS[at - 1] ?? -Infinity, curves.timeS[at] ?? Infinity];
  const nearest = timeS - a < b - timeS ? at - 1 : at;
  if (Math.abs((curves.timeS[nearest] ?? Infinity) - timeS) > 0.03) return null;
  return curves[name][nearest] ?? null;
}
