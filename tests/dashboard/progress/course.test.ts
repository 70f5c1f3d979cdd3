import { describe, expect, it } from 'vitest';
import { DEFAULT_PLAN, type Plan } from '../../../src/coaching/plan.ts';
import { calendarOf } from '../../../src/dashboard/progress/calendar.ts';
import {
  DAY_MS,
  bandsOf,
  inRange,
  pointsOf,
  stepsOf,
} from '../../../src/dashboard/progress/course.ts';
import {
  carryOverCourse,
  measureCourses,
  painCourse,
} from '../../../src/dashboard/progress/courses.ts';
import {
  linePath,
  markSize,
  marksPath,
  nearest,
  quartilesPath,
} from '../../../src/dashboard/progress/marks.ts';
import { planDifference } from '../../../src/dashboard/progress/planDifference.ts';
import { timeTicks } from '../../../src/dashboard/progress/timeTicks.ts';
import type { ProgressEntry } from '../../../src/streaming/sessionsContract.ts';

const FIRST = new Date(2026, 2, 2, 18).getTime();
const spread = (median: number, count = 9) => ({
  count,
  low: median - 1,
  median,
  high: median + 1,
});
const stricter: Plan = {
  ...DEFAULT_PLAN,
  targets: { ...DEFAULT_PLAN.targets, addedFlexionDeg: { min: 4 } },
};

const entry = (day: number, change: Partial<ProgressEntry> = {}): ProgressEntry => ({
  id: `s${day}`,
  startedAt: new Date(FIRST + day * DAY_MS).toISOString(),
  simulated: true,
  rehearsals: { addedFlexionDeg: spread(5) },
  balls: {},
  scored: 9,
  passed: 3,
  warnings: 0,
  planChanged: false,
  plan: null,
  painBefore: null,
  painAfter: null,
  repetitions: 12,
  carryOver: { addedFlexion: null, keptRotation: null },
  ...change,
});

const course = stepsOf([
  entry(0, { plan: DEFAULT_PLAN }),
  entry(2, { warnings: 1 }),
  entry(10, { plan: stricter, planChanged: true, balls: { addedFlexionDeg: spread(2, 2) } }),
  entry(40),
]);

describe('sessions in order', () => {
  it('each have the plan that held then', () => {
    expect(course.map((s) => s.plan.targets.addedFlexionDeg?.min)).toEqual([2, 2, 4, 4]);
    expect(course.map((s) => s.planBefore)).toEqual([null, null, DEFAULT_PLAN, null]);
  });

  it('keep their plan when the range leaves out the session that brought it', () => {
    const last = inRange(course, 'month', FIRST + 41 * DAY_MS);
    expect(last.map((s) => s.id)).toEqual(['s40']);
    expect(last[0]!.plan).toBe(stricter);
    expect(inRange(course, 'all', FIRST + 41 * DAY_MS)).toHaveLength(4);
    expect(inRange(course, 'threeMonths', FIRST + 100 * DAY_MS)).toHaveLength(2);
  });

  it('give points for rehearsals and balls apart, only where the measure was taken', () => {
    expect(pointsOf(course, 'rehearsals', 'addedFlexionDeg')).toHaveLength(4);
    expect(pointsOf(course, 'balls', 'addedFlexionDeg').map((p) => p.spread.count)).toEqual([2]);
    expect(pointsOf(course, 'balls', 'holdS')).toEqual([]);
  });
});

describe('the target band', () => {
  it('is as the plan had it at each time', () => {
    const end = FIRST + 50 * DAY_MS;
    expect(bandsOf(course, 'addedFlexionDeg', end)).toEqual([
      { fromMs: FIRST, toMs: FIRST + 10 * DAY_MS, target: { min: 2 } },
      { fromMs: FIRST + 10 * DAY_MS, toMs: end, target: { min: 4 } },
    ]);
  });

  it('has a hole while the plan did not ask', () => {
    const without = { ...DEFAULT_PLAN, targets: { ...DEFAULT_PLAN.targets, holdS: null } };
    const steps = stepsOf([
      entry(0, { plan: DEFAULT_PLAN }),
      entry(1, { plan: without, planChanged: true }),
      entry(2, { plan: DEFAULT_PLAN, planChanged: true }),
    ]);
    expect(bandsOf(steps, 'holdS', FIRST + 3 * DAY_MS).map((b) => b.toMs)).toEqual([
      FIRST + DAY_MS,
      FIRST + 3 * DAY_MS,
    ]);
  });

  it('lies inside the axis with all values', () => {
    const { range } = measureCourses(course, FIRST + 50 * DAY_MS).get('addedFlexionDeg')!;
    expect(range.low).toBeLessThanOrEqual(1);
    expect(range.high).toBeGreaterThanOrEqual(6);
  });
});

describe('what else is followed', () => {
  it('leaves out carry-over and pain that are not known', () => {
    expect(carryOverCourse(course).series.every((s) => s.points.length === 0)).toBe(true);
    const steps = stepsOf([entry(0, { plan: DEFAULT_PLAN, painBefore: 0, painAfter: 3 })]);
    expect(painCourse(steps).series.map((s) => s.points[0]?.spread.median)).toEqual([0, 3]);
  });

  it('names what a plan changed', () => {
    expect(planDifference(DEFAULT_PLAN, stricter)).toEqual([
      { what: 'target', measure: 'addedFlexionDeg', before: { min: 2 }, after: { min: 4 } },
    ]);
    const more = { ...DEFAULT_PLAN, ratio: { rehearsals: 3, balls: 1 } };
    expect(planDifference(DEFAULT_PLAN, more)).toEqual([
      { what: 'ratio', before: '2:1', after: '3:1' },
    ]);
    expect(planDifference(DEFAULT_PLAN, { ...DEFAULT_PLAN, note: 'x' })[0]?.what).toBe('other');
  });
});

describe('the calendar', () => {
  it('has every day with what was practised on it', () => {
    const end = FIRST + 45 * DAY_MS;
    const { days, practised, longestBreak } = calendarOf(course, FIRST, end);
    expect(days).toHaveLength(46);
    expect(practised).toBe(4);
    expect(longestBreak).toBe(29);
    // 2 March 2026 was a Monday.
    expect(days[0]).toMatchObject({ week: 0, weekday: 0, sessions: 1, repetitions: 12 });
    expect(days[2]).toMatchObject({ weekday: 2, warnings: 1 });
    expect(days[7]).toMatchObject({ week: 1, weekday: 0, sessions: 0 });
  });

  it('loses no day where clocks change', () => {
    const noon = (d: number) => new Date(2026, 2, d, 12).getTime();
    const { days } = calendarOf([], noon(20), noon(20) + 30 * DAY_MS);
    expect(new Set(days.map((d) => new Date(d.atMs).toDateString())).size).toBe(days.length);
  });

  it('adds up several sessions of a day', () => {
    const steps = stepsOf([entry(0, { plan: DEFAULT_PLAN }), entry(0.1)]);
    expect(calendarOf(steps, FIRST, FIRST).days[0]).toMatchObject({ sessions: 2, repetitions: 24 });
  });
});

describe('drawing a course', () => {
  const scales = { x: (ms: number) => ms, y: (v: number) => 100 - v };
  const points = [
    { atMs: 0, spread: spread(10) },
    { atMs: 50, spread: { ...spread(20), low: 20, high: 20 } },
  ];

  it('is one path for all bars, marks and the line', () => {
    expect(quartilesPath(points, scales)).toBe('M0.0 91.0V89.0');
    expect(linePath(points, scales)).toBe('M0.0 90.0L50.0 80.0');
    expect(marksPath(points, 'triangle', scales).match(/M/g)).toHaveLength(2);
  });

  it('has smaller marks where many sessions share the width, never too small to see', () => {
    expect(markSize(600, 20)).toBe(4);
    expect(markSize(600, 200)).toBeCloseTo(2.4, 6);
    expect(markSize(600, 5000)).toBe(1.6);
    expect(marksPath(points, 'circle', scales, 2)).toBe(
      'M-2.0 90.0a2.0 2.0 0 1 0 4.0 0a2.0 2.0 0 1 0 -4.0 0M48.0 80.0a2.0 2.0 0 1 0 4.0 0a2.0 2.0 0 1 0 -4.0 0',
    );
  });

  it('finds the session nearest to a click', () => {
    expect(nearest([0, 10, 30], 21)).toBe(2);
    expect(nearest([0, 10, 30], -5)).toBe(0);
  });

  it.each([3, 20, 90, 400, 1500])('has few names of times in %i days, all inside', (days) => {
    const range = { low: FIRST, high: FIRST + days * DAY_MS };
    const ticks = timeTicks(range, 6);
    expect(ticks.length).toBeGreaterThan(0);
    expect(ticks.length).toBeLessThanOrEqual(7);
    for (const { ms } of ticks) expect(ms >= range.low && ms <= range.high).toBe(true);
  });
});
