import { median } from '../math/stats.ts';
import { measureLabel, measureText, minusSigns, targetText } from './measureText.ts';
import { type Plan, TARGET_MEASURES, type Target, type TargetMeasure } from './plan.ts';

/** One session's rehearsals: median of each measure and of how many. */
export interface DriftFacts {
  readonly rehearsals: Partial<
    Record<TargetMeasure, { readonly count: number; readonly median: number }>
  >;
}

export interface Drift {
  readonly measure: TargetMeasure;
  readonly text: string;
  /** How far outside the target now, in clear steps. */
  readonly away: number;
}

/** Sessions that are now, and the most and fewest before them that they are held against. Choices. */
const NOW = 3;
const BEFORE_MOST = 6;
const BEFORE_FEWEST = 3;
export const DRIFT_SESSIONS = NOW + BEFORE_MOST;

/** A change of medians smaller than this is no drift: about the accuracy aimed for. Choices. */
const CLEAR: Readonly<Record<TargetMeasure, number>> = {
  holdS: 0.1,
  chestLeadMs: 20,
  leanChangeDeg: 2,
  addedFlexionDeg: 2,
  keptRotationDeg: 4.5,
  turnTowardTargetDeg: 4,
  releaseToCatchMs: 30,
};

const outside = (value: number, { min, max }: Target): number =>
  Math.max(0, (min ?? value) - value, value - (max ?? value));

/**
 * Measures whose last three sessions (median of medians) lie outside the plan's target, while the three to six sessions
 * before lay inside or clearly nearer. @param recent newest first
 */
export const drifts = (
  plan: Pick<Plan, 'targets'>,
  recent: readonly DriftFacts[],
): readonly Drift[] =>
  TARGET_MEASURES.flatMap((measure) => {
    const target = plan.targets[measure];
    const taken = recent.flatMap(({ rehearsals }) => rehearsals[measure] ?? []);
    const found = target === null ? null : driftOf(measure, target, taken);
    return found === null ? [] : [found];
  });

type Taken = readonly { readonly count: number; readonly median: number }[];

function driftOf(measure: TargetMeasure, target: Target, taken: Taken): Drift | null {
  const [last, before] = [taken.slice(0, NOW), taken.slice(NOW, NOW + BEFORE_MOST)];
  if (before.length < BEFORE_FEWEST) return null;
  const [now, then] = [last, before].map((all) => median(all.map((s) => s.median)) ?? 0) as [
    number,
    number,
  ];
  const away = outside(now, target);
  if (away === 0) return null;
  const inside = outside(then, target) === 0;
  const moved = inside ? Math.abs(now - then) : away - outside(then, target);
  if (moved < CLEAR[measure]) return null;
  const label = measureLabel(measure);
  const text = minusSigns(
    `${label.charAt(0).toUpperCase()}${label.slice(1)}: ${measureText(measure, now, target)} in the last 3 sessions ` +
      `(${counted(last)} rehearsals), target ${targetText(measure, target)}; ` +
      `${measureText(measure, then, target)} in the ${before.length} before (${counted(before)}).`,
  );
  return { measure, text, away: away / CLEAR[measure] };
}

const counted = (sessions: Taken): number => sessions.reduce((sum, s) => sum + s.count, 0);
