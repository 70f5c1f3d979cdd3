import {
  type PracticeCounts,
  type UncountedSession,
  practiceCounts,
  uncounted,
} from '../../coaching/notCounted.ts';
import type { Plan, Target, TargetMeasure } from '../../coaching/plan.ts';
import type { ProgressEntry, SpreadView } from '../../streaming/sessionsContract.ts';

export const RANGES = ['all', 'threeMonths', 'month'] as const;
export type RangeName = (typeof RANGES)[number];

export const DAY_MS = 86_400_000;
const DAYS: Readonly<Record<RangeName, number>> = { all: Infinity, threeMonths: 91, month: 30 };

/** A session with the plan it was done under. */
export interface Step extends Omit<ProgressEntry, 'plan'> {
  readonly plan: Plan;
  /** The plan of the session before, where it was another. */
  readonly planBefore: Plan | null;
  readonly atMs: number;
}

/** Gives each session its plan: an entry without one has that of the entry before. */
export function stepsOf(sessions: readonly ProgressEntry[]): readonly Step[] {
  let plan: Plan | null = null;
  return sessions.flatMap((entry) => {
    const before: Plan | null = plan;
    plan = entry.plan ?? before;
    if (plan === null) return [];
    const planBefore = entry.planChanged && before !== plan ? before : null;
    return [{ ...entry, plan, planBefore, atMs: Date.parse(entry.startedAt) }];
  });
}

/** The steps of the last days up to `nowMs`. */
export const inRange = (steps: readonly Step[], range: RangeName, nowMs: number): readonly Step[] =>
  steps.filter((s) => s.atMs > nowMs - DAYS[range] * DAY_MS);

/** What the last days up to `nowMs` have beside the steps. */
export const countsInRange = (
  others: readonly UncountedSession[],
  range: RangeName,
  nowMs: number,
): PracticeCounts => practiceCounts(uncounted(others), nowMs - DAYS[range] * DAY_MS);

export interface CoursePoint {
  readonly atMs: number;
  readonly spread: SpreadView;
}

export const pointsOf = (
  steps: readonly Step[],
  kind: 'rehearsals' | 'balls',
  measure: TargetMeasure,
): readonly CoursePoint[] =>
  steps.flatMap(({ atMs, ...step }) => {
    const spread = step[kind][measure];
    return spread === undefined ? [] : [{ atMs, spread }];
  });

/** A target from one time to another. */
export interface Band {
  readonly fromMs: number;
  readonly toMs: number;
  readonly target: Target;
}

const sameTarget = (a: Target, b: Target): boolean => a.min === b.min && a.max === b.max;

/** The target as it was at each time: from the session that first had it to the one that had another. */
export function bandsOf(
  steps: readonly Step[],
  measure: TargetMeasure,
  endMs: number,
): readonly Band[] {
  const bands: Band[] = [];
  steps.forEach((step, i) => {
    const target = step.plan.targets[measure];
    const toMs = steps[i + 1]?.atMs ?? endMs;
    const last = bands.at(-1);
    if (target === null) return;
    if (last?.toMs === step.atMs && sameTarget(last.target, target))
      bands[bands.length - 1] = { ...last, toMs };
    else bands.push({ fromMs: step.atMs, toMs, target });
  });
  return bands;
}
