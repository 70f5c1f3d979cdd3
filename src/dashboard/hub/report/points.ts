import { MEASURE_INFO } from '../../../coaching/measureInfo.ts';
import type { Plan, Target, TargetMeasure } from '../../../coaching/plan.ts';
import type {
  HubProgress,
  PlanVersion,
  ProgressSession,
} from '../../../streaming/hubContract/students.ts';
import { ANGLE_STEPS, ROUND_STEPS, type Range, rangeOf } from '../../review/plot/scale.ts';
import type { SpreadView } from '../../../streaming/sessionsContract.ts';

/** What the drawings of a report are made from. */
export interface CourseProps {
  readonly sessions: HubProgress['sessions'];
  readonly plans: readonly PlanVersion[];
  readonly lessons: HubProgress['lessons'];
  readonly plan: Plan;
  readonly range: { readonly fromMs: number; readonly toMs: number };
}

/** Changes of the plan and lessons that lie in the range. */
export function marksIn({ plans, lessons, range }: CourseProps) {
  const within = (ms: number): boolean => ms >= range.fromMs && ms <= range.toMs;
  return {
    changes: plans.filter(({ number, validFromMs }) => number > 1 && within(validFromMs)),
    met: lessons.filter(({ atMs }) => within(atMs)),
  };
}

export interface CoursePoint extends SpreadView {
  readonly atMs: number;
  readonly kind: 'rehearsals' | 'balls';
}

/** One measure of one kind of repetition in every session that has it. */
export const pointsOf = (
  sessions: readonly ProgressSession[],
  measure: TargetMeasure,
): readonly CoursePoint[] =>
  sessions.flatMap((s) =>
    (['rehearsals', 'balls'] as const).flatMap((kind) => {
      const spread = s[kind][measure];
      return spread === undefined ? [] : [{ ...spread, atMs: s.startedMs, kind }];
    }),
  );

interface ValueAxis extends Range {
  /** Round values, the ends among them. */
  readonly ticks: readonly number[];
}

const MOST_STEPS = 4;

/**
 * Every middle half and the target, never less than what one value is sure to; it begins and ends at a round value,
 * so that both ends say what they are.
 */
export function axisOf(
  points: readonly CoursePoint[],
  measure: TargetMeasure,
  target: Target | null,
): ValueAxis {
  const { accuracy, unit } = MEASURE_INFO[measure];
  const ends = [target?.min, target?.max].filter((v): v is number => v !== undefined);
  const columns = [...points.flatMap(({ low, high }) => [low, high]), ...ends];
  const steps = (unit === '°' ? ANGLE_STEPS : ROUND_STEPS).filter((s) => unit !== 'ms' || s >= 10);
  for (const step of steps) {
    const { low, high } = rangeOf([columns], step, accuracy.plusMinus);
    const count = Math.round((high - low) / step);
    if (count > MOST_STEPS) continue;
    const ticks = Array.from({ length: count + 1 }, (_, i) => Number((low + i * step).toFixed(6)));
    return { low: ticks[0]!, high: ticks.at(-1)!, ticks };
  }
  const range = rangeOf([columns], steps.at(-1)!, accuracy.plusMinus);
  return { ...range, ticks: [range.low, range.high] };
}
