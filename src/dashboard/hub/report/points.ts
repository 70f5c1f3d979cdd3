import { MEASURE_INFO } from '../../../coaching/measureInfo.ts';
import type { Target, TargetMeasure } from '../../../coaching/plan.ts';
import type { ProgressSession } from '../../../streaming/hubContract/students.ts';
import type { SpreadView } from '../../../streaming/sessionsContract.ts';

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

/** Lowest and highest value that a drawing shows: every middle half and the target, never less than what one value is sure to. */
export function rangeOf(
  points: readonly CoursePoint[],
  measure: TargetMeasure,
  target: Target | null,
): readonly [number, number] {
  const sure = MEASURE_INFO[measure].accuracy.plusMinus;
  const ends = [target?.min, target?.max].filter((v): v is number => v !== undefined);
  const all = [...points.flatMap(({ low, high }) => [low, high]), ...ends];
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const pad = Math.max((high - low) * 0.08, sure / 2);
  return [low - pad, high + pad];
}
