import { TARGET_MEASURES, type TargetMeasure } from '../../coaching/plan.ts';
import { type Range, rangeOf } from '../review/plot/scale.ts';
import { type Band, type CoursePoint, type Step, bandsOf, pointsOf } from './course.ts';
import type { Series } from './Chart.tsx';
import { t } from '../strings/strings.ts';

const words = t.progress;

/** One chart's worth. */
export interface Course {
  readonly series: readonly Series[];
  readonly bands: readonly Band[];
  readonly range: Range;
  /** The points' counts are repetitions; else a point is one figure and has none. */
  readonly counted: boolean;
}

/** Round steps of an axis by what a unit is worth. */
const STEP: Readonly<Record<TargetMeasure, number>> = {
  holdS: 0.5,
  chestLeadMs: 50,
  leanChangeDeg: 5,
  addedFlexionDeg: 5,
  keptRotationDeg: 5,
  turnTowardTargetDeg: 10,
  releaseToCatchMs: 100,
};

const valuesOf = (points: readonly CoursePoint[]): readonly number[] =>
  points.flatMap(({ spread }) => [spread.low, spread.median, spread.high]);

function courseOf(steps: readonly Step[], measure: TargetMeasure, endMs: number): Course {
  const series: readonly Series[] = [
    {
      name: words.series.rehearsals,
      shape: 'circle',
      points: pointsOf(steps, 'rehearsals', measure),
    },
    { name: words.series.balls, shape: 'triangle', points: pointsOf(steps, 'balls', measure) },
  ];
  const bands = bandsOf(steps, measure, endMs);
  const ends = bands.flatMap(({ target }) => [target.min ?? null, target.max ?? null]);
  const step = STEP[measure];
  const range = rangeOf([...series.map((s) => valuesOf(s.points)), ends], step, 2 * step);
  return { series, bands, range, counted: true };
}

/** Measures that a plan of the range asks for or that were taken in it. */
export const measureCourses = (
  steps: readonly Step[],
  endMs: number,
): ReadonlyMap<TargetMeasure, Course> =>
  new Map(
    TARGET_MEASURES.map((m) => [m, courseOf(steps, m, endMs)] as const).filter(
      ([, { series, bands }]) => bands.length > 0 || series.some((s) => s.points.length > 0),
    ),
  );

/** A value without spread, of `count` repetitions. */
const single = (atMs: number, value: number, count: number): CoursePoint => ({
  atMs,
  spread: { count, low: value, median: value, high: value },
});

const ENOUGH = 3;

const pointsBy = (
  steps: readonly Step[],
  value: (step: Step) => number | null,
  count: (step: Step) => number = () => ENOUGH,
): readonly CoursePoint[] =>
  steps.flatMap((step) => {
    const v = value(step);
    return v === null ? [] : [single(step.atMs, v, count(step))];
  });

/** Percent of the scored rehearsals. */
export const passedCourse = (steps: readonly Step[]): Course => ({
  series: [
    {
      name: words.series.rehearsals,
      shape: 'circle',
      points: pointsBy(
        steps,
        (s) => (s.scored === 0 ? null : (100 * s.passed) / s.scored),
        (s) => s.scored,
      ),
    },
  ],
  bands: [],
  range: { low: 0, high: 100 },
  counted: true,
});

const percent = (ratio: number | null): number | null => (ratio === null ? null : 100 * ratio);

/** Percent of the rehearsals' median; the line at 100 is the same movement. */
export function carryOverCourse(steps: readonly Step[]): Course {
  const series: readonly Series[] = [
    {
      name: words.carry.addedFlexion,
      shape: 'circle',
      points: pointsBy(steps, (s) => percent(s.carryOver.addedFlexion)),
    },
    {
      name: words.carry.keptRotation,
      shape: 'diamond',
      points: pointsBy(steps, (s) => percent(s.carryOver.keptRotation)),
    },
  ];
  return {
    series,
    bands: [],
    range: rangeOf([...series.map((s) => valuesOf(s.points)), [0, 100]], 50, 100),
    counted: false,
  };
}

/** Ratings before and after, 0 to 10. */
export const painCourse = (steps: readonly Step[]): Course => ({
  series: [
    { name: words.series.before, shape: 'circle', points: pointsBy(steps, (s) => s.painBefore) },
    { name: words.series.after, shape: 'diamond', points: pointsBy(steps, (s) => s.painAfter) },
  ],
  bands: [],
  range: { low: 0, high: 10 },
  counted: false,
});
