import {
  type Batch,
  CURVE_WINDOW_S,
  type CurveView,
  type PracticeView,
} from '../../streaming/contract.ts';

/** Our curve with the points that are newer than it, cut to its window. */
export function mergeCurve(ours: CurveView, points: CurveView): CurveView {
  const newest = ours.timeS.at(-1) ?? -Infinity;
  const from = points.timeS.findIndex((t) => t > newest);
  if (from < 0) return ours;
  const last = points.timeS.at(-1) ?? newest;
  const kept = ours.timeS.findIndex((t) => t >= last - CURVE_WINDOW_S);
  const join = <T>(a: readonly T[], b: readonly T[]): T[] => [
    ...(kept < 0 ? [] : a.slice(kept)),
    ...b.slice(from),
  ];
  return {
    timeS: join(ours.timeS, points.timeS),
    flexionDeg: join(ours.flexionDeg, points.flexionDeg),
    turnDeg: join(ours.turnDeg, points.turnDeg),
    keptRotationDeg: join(ours.keptRotationDeg, points.keptRotationDeg),
  };
}

/** The view after a batch: its sections replace ours, its points are appended to our curve. */
export const mergeBatch = (view: PracticeView, batch: Batch): PracticeView => ({
  ...view,
  ...batch.sections,
  curve: mergeCurve(view.curve, batch.points),
});
