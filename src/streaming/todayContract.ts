import type { NotCounted } from '../coaching/notCounted.ts';
import type { Proposal } from '../coaching/proposal.ts';
import type { SinceLast } from '../coaching/sinceLast.ts';
import type { PracticeSummary } from '../coaching/summary.ts';

/** What the first page says of the practice before. Types only. Times are epoch ms. */

/** GET /api/today */
export interface TodayView {
  /** The newest practice, counted or not; a simulated one is none. */
  readonly last: {
    readonly startedMs: number;
    readonly notCounted: NotCounted | null;
    /** Why it could not be analysed, in words. */
    readonly problem: string | null;
    readonly repetitions: number;
    readonly note: string;
  } | null;
  /** Somebody looked at simulated sessions and has not practised yet. */
  readonly onlySimulated: boolean;
  /** The newest counted session beside the one before it; `null` before the first. */
  readonly since: SinceLast | null;
  /** Of the newest counted session, with what to do next; `null` where its result cannot be read. */
  readonly focus: PracticeSummary | null;
  /** What may come next; `null` where nothing is proposed. */
  readonly proposal: Proposal | null;
}
