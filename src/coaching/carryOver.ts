import { median } from '../math/stats.ts';
import type { Ball, Rehearsal } from '../swings/repetition.ts';
import type { CarryOver } from './judgement.ts';
import { poolValues } from './pools.ts';

/** Fewest repetitions of each kind with the measure taken and the signal whole. A choice. */
const CARRY_OVER_FEWEST = 3;

/** A ratio over a rehearsals' median nearer to zero than this says nothing, deg. Choices: twice, and once and a half, the accuracy aimed for. */
const CARRY_OVER_SMALLEST = { addedFlexionDeg: 2, keptRotationDeg: 4.5 } as const;

type Key = keyof typeof CARRY_OVER_SMALLEST;

/**
 * The balls' median divided by the rehearsals' median, per measure: 1 = the same movement, 0 = none of it.
 * Kept rotation is mostly a loss (negative): there more than 1 means that balls lose more than rehearsals.
 * `null` with fewer than three usable repetitions of either kind or a rehearsals' median near zero.
 */
export const carryOver = (rehearsals: readonly Rehearsal[], balls: readonly Ball[]): CarryOver => ({
  addedFlexion: ratioOfMedians('addedFlexionDeg', rehearsals, balls),
  keptRotation: ratioOfMedians('keptRotationDeg', rehearsals, balls),
});

function ratioOfMedians(
  key: Key,
  rehearsals: readonly Rehearsal[],
  balls: readonly Ball[],
): number | null {
  const base = usableMedian(key, rehearsals);
  const ball = usableMedian(key, balls);
  if (base === null || ball === null) return null;
  return Math.abs(base) < CARRY_OVER_SMALLEST[key] ? null : ball / base;
}

function usableMedian(key: Key, repetitions: readonly (Rehearsal | Ball)[]): number | null {
  const values = poolValues(repetitions, key);
  return values.length < CARRY_OVER_FEWEST ? null : median(values);
}
