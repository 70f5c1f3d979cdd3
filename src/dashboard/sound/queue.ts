import type { Announcement } from './announce.ts';

/** An announcement that waits, and until when it may be begun, page ms. */
export interface Waiting {
  readonly what: Announcement;
  readonly untilMs: number;
}

/** An older waiting announcement of the same kind is no longer true. */
const NEWEST_ONLY: readonly Announcement['kind'][] = ['cue', 'ledger', 'step', 'connection'];
/** Warnings before all else, then what is true for the shortest time. */
const ORDER: readonly Announcement['kind'][] = [
  'warning',
  'cue',
  'connection',
  'sensor',
  'ledger',
  'step',
  'rest',
];

const rank = ({ what }: Waiting): number => ORDER.indexOf(what.kind);

/** The queue with one more, in the order in which they are to be said. */
export function enqueue(
  queue: readonly Waiting[],
  what: Announcement,
  nowMs: number,
): readonly Waiting[] {
  const replaced = (w: Waiting): boolean =>
    w.what.kind === what.kind && NEWEST_ONLY.includes(what.kind);
  const next = { what, untilMs: what.withinMs === null ? Infinity : nowMs + what.withinMs };
  return [...queue.filter((w) => !replaced(w)), next].sort((a, b) => rank(a) - rank(b));
}

/** Without what is no longer true. */
export const stillTrue = (queue: readonly Waiting[], nowMs: number): readonly Waiting[] =>
  queue.filter(({ untilMs }) => nowMs <= untilMs);
