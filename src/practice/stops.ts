import type { SafetyWarning, WarningId } from '../coaching/judgement.ts';

/** Warnings that ask for no more practice on the day they come, the gravest first. */
export const STOP_IDS = ['red-flag', 'pain-high', 'pain-now'] as const satisfies WarningId[];

export type StopId = (typeof STOP_IDS)[number];

/** A stop as it is kept of a person. */
export interface Stop {
  readonly id: StopId;
  /** ms since 1970, UTC. */
  readonly atMs: number;
  /** The person has said that they read it, afterwards. */
  readonly read: boolean;
}

const gravity = (id: StopId): number => STOP_IDS.indexOf(id);

/** The gravest stop among a practice's warnings; `null` where none asks for one. */
export const stopAmong = (warnings: readonly Pick<SafetyWarning, 'id'>[]): StopId | null =>
  STOP_IDS.find((stop) => warnings.some(({ id }) => id === stop)) ?? null;

/** Both lie on the same day where this runs. */
const sameDay = (aMs: number, bMs: number): boolean =>
  new Date(aMs).toDateString() === new Date(bMs).toDateString();

/** The stop where it is of today, else `null`. */
export const stopToday = (stop: Stop | null | undefined, nowMs: number): Stop | null =>
  stop && sameDay(stop.atMs, nowMs) ? stop : null;

/** What is kept once a stop came: one of the same day that is graver stays, to be read anew. */
export function withStop(kept: Stop | null | undefined, id: StopId, nowMs: number): Stop {
  const before = stopToday(kept, nowMs);
  const graver = before !== null && gravity(before.id) < gravity(id) ? before.id : id;
  return { id: graver, atMs: nowMs, read: false };
}
