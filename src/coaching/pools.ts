import { percentile } from '../math/stats.ts';
import type { Ball, Repetition } from '../swings/repetition.ts';
import { isCounted } from './asSaid.ts';
import { isUnscored } from './judge.ts';
import type { HandMark, JudgedRehearsal, JudgedRepetition } from './judgement.ts';
import { measureValue } from './measureValue.ts';
import type { TargetMeasure } from './plan.ts';

/** The repetitions whose numbers are taken together. */
export interface Pools {
  readonly rehearsals: readonly JudgedRehearsal[];
  readonly balls: readonly Ball[];
}

/** Nobody said that it was nothing, and its signal is whole: only then are its numbers pooled. */
export const isPooled = (r: Pick<Repetition, 'flags'> & { readonly marked?: HandMark }): boolean =>
  isCounted(r) && !isUnscored(r);

/** Rehearsals and balls of a session whose numbers stand, each as the kind that it stands for. */
export function poolsOf(repetitions: readonly JudgedRepetition[]): Pools {
  const pooled = repetitions.filter(isPooled);
  return {
    rehearsals: pooled.filter((r): r is JudgedRehearsal => r.kind === 'rehearsal'),
    balls: pooled.filter((r): r is Ball => r.kind === 'ball'),
  };
}

/** A measure's pool: the values that were taken, in the order of the repetitions. */
export const poolValues = (
  pool: readonly Repetition[],
  measure: TargetMeasure,
): readonly number[] =>
  pool
    .filter(isPooled)
    .map((r) => measureValue(r, measure))
    .filter((v): v is number => v !== null && Number.isFinite(v));

/** Median and quartiles of one measure over a session. */
export interface Spread {
  readonly count: number;
  readonly low: number;
  readonly median: number;
  readonly high: number;
}

/** Of finite values; `null` without any. */
export function spreadOf(values: readonly number[]): Spread | null {
  const at = (p: number): number | null => percentile(values, p);
  const [low, median, high] = [at(0.25), at(0.5), at(0.75)];
  if (low === null || median === null || high === null) return null;
  return { count: values.length, low, median, high };
}

/** Of a pool's rehearsals, those judged by a measure's target and those that reached it. */
export interface Checked {
  readonly scored: number;
  readonly passed: number;
}

export function checkedOf(pool: readonly JudgedRehearsal[], measure: TargetMeasure): Checked {
  const judged = pool
    .filter(isPooled)
    .flatMap((r) => r.verdict.checks)
    .filter((c) => c.measure === measure && c.passed !== null);
  return { scored: judged.length, passed: judged.filter((c) => c.passed === true).length };
}
