import { CURVE_STEP_S, CURVE_WINDOW_S, type CurveView } from './view.ts';

/** The same columns, written in place. */
export interface CurveColumns extends CurveView {
  readonly timeS: number[];
  readonly flexionDeg: (number | null)[];
  readonly turnDeg: (number | null)[];
  readonly keptRotationDeg: (number | null)[];
}

export interface CurvePoint {
  readonly timeS: number;
  readonly flexionDeg: number | null;
  readonly turnDeg: number | null;
  readonly keptRotationDeg: number | null;
}

export const emptyCurve = (): CurveColumns => ({
  timeS: [],
  flexionDeg: [],
  turnDeg: [],
  keptRotationDeg: [],
});

export function pushPoint(curve: CurveColumns, point: CurvePoint): void {
  curve.timeS.push(point.timeS);
  curve.flexionDeg.push(point.flexionDeg);
  curve.turnDeg.push(point.turnDeg);
  curve.keptRotationDeg.push(point.keptRotationDeg);
}

/** True where a point at `timeS` would come no closer than the curve's step. */
export function wantsPoint(curve: CurveView, timeS: number): boolean {
  const last = curve.timeS.at(-1);
  return last === undefined || timeS >= last + CURVE_STEP_S;
}

/** Drops what has left the window. */
export function trimCurve(curve: CurveColumns): void {
  const last = curve.timeS.at(-1);
  if (last === undefined) return;
  const from = last - CURVE_WINDOW_S;
  const kept = curve.timeS.findIndex((t) => t >= from);
  if (kept <= 0) return;
  for (const column of [curve.timeS, curve.flexionDeg, curve.turnDeg, curve.keptRotationDeg]) {
    column.splice(0, kept);
  }
}

/** Appends `points` and keeps the window. */
export function appendCurve(curve: CurveColumns, points: CurveView): void {
  points.timeS.forEach((timeS, i) =>
    pushPoint(curve, {
      timeS,
      flexionDeg: points.flexionDeg[i] ?? null,
      turnDeg: points.turnDeg[i] ?? null,
      keptRotationDeg: points.keptRotationDeg[i] ?? null,
    }),
  );
  trimCurve(curve);
}
