import { mean, median } from '../math/stats.ts';
import type { Check, JudgedRehearsal } from './judgement.ts';
import { MEASURE_INFO } from './measureInfo.ts';
import { TARGET_MEASURES } from './plan.ts';

/** The rules in words, to stand beside what they chose. */
export const BEST_RULE =
  'Best: most targets met. If several are equal: the one whose closest measure is deepest inside its target.';
export const TYPICAL_RULE =
  'Typical: its measures are closest, on average, to the medians of the session.';

export const WORST_RULE =
  'Farthest from target: fewest targets met. If several are equal: the one with a measure farthest outside its target.';

/** @param scored rehearsals that passed or failed; the earlier one wins where even */
export const bestRehearsal = (scored: readonly JudgedRehearsal[]): JudgedRehearsal | null =>
  greatest(scored, (r) => [r.verdict.checks.filter((c) => c.passed).length, closestMargin(r)]);

/** @param scored rehearsals that passed or failed; the earlier one wins where even */
export const worstRehearsal = (scored: readonly JudgedRehearsal[]): JudgedRehearsal | null =>
  greatest(scored, (r) => [-r.verdict.checks.filter((c) => c.passed).length, -closestMargin(r)]);

export function typicalRehearsal(scored: readonly JudgedRehearsal[]): JudgedRehearsal | null {
  const medians = TARGET_MEASURES.map((m) =>
    median(scored.flatMap((r) => checkOf(r, m)?.value ?? [])),
  );
  return greatest(scored, (r) => [-distance(r, medians)]);
}

const checkOf = (r: JudgedRehearsal, measure: Check['measure']): Check | undefined =>
  r.verdict.checks.find((c) => c.measure === measure);

/** Differences of unlike measures are compared in units of each one's accuracy. */
const inAccuracies = (measure: Check['measure'], difference: number): number =>
  difference / MEASURE_INFO[measure].accuracy.plusMinus;

function closestMargin(r: JudgedRehearsal): number {
  const margins = r.verdict.checks.flatMap(({ measure, value, target }) => {
    if (value === null) return [];
    const inside = Math.min(value - (target.min ?? -Infinity), (target.max ?? Infinity) - value);
    return [inAccuracies(measure, inside)];
  });
  return Math.min(...margins);
}

function distance(r: JudgedRehearsal, medians: readonly (number | null)[]): number {
  const distances = TARGET_MEASURES.flatMap((m, i) => {
    const value = checkOf(r, m)?.value ?? null;
    const middle = medians[i] ?? null;
    return value === null || middle === null ? [] : [Math.abs(inAccuracies(m, value - middle))];
  });
  return mean(distances) ?? Infinity;
}

/** The first item with the greatest rank, ranks compared part by part. */
function greatest<T>(items: readonly T[], rankOf: (item: T) => readonly number[]): T | null {
  const ranked = items.map((item) => ({ item, rank: rankOf(item) }));
  const best = ranked.reduce<(typeof ranked)[number] | null>(
    (a, b) => (a === null || isAbove(b.rank, a.rank) ? b : a),
    null,
  );
  return best === null ? null : best.item;
}

function isAbove(a: readonly number[], b: readonly number[]): boolean {
  const at = a.findIndex((v, i) => v !== b[i]);
  return at >= 0 && (a[at] ?? 0) > (b[at] ?? 0);
}
