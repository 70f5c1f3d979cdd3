import type { CorrectedKind, LedgerStatus } from './ledger.ts';
import type { Plan } from './plan.ts';

/** How far a session is, after corrections. */
export interface SessionCount {
  /** Rehearsals passed one after another up to now; balls and rehearsals that were not scored do not end the row. */
  readonly inARow: number;
  /** Rehearsals passed so far. */
  readonly passed: number;
  /** Rehearsals and balls so far. */
  readonly done: number;
  /** Rehearsals and balls that the plan has for one session. */
  readonly goal: number;
}

/** One repetition as it stands. */
interface Counted {
  readonly kind: CorrectedKind;
  /** `null`: not scored, or no rehearsal. */
  readonly passed: boolean | null;
}

/** @param entries oldest first */
export function sessionCount(
  entries: readonly Counted[],
  { volume }: Pick<Plan, 'volume'>,
): SessionCount {
  const counted = entries.filter(({ kind }) => kind === 'rehearsal' || kind === 'ball');
  const verdicts = counted.flatMap(({ kind, passed }) =>
    kind === 'rehearsal' && passed !== null ? [passed] : [],
  );
  return {
    inARow: verdicts.length - 1 - verdicts.lastIndexOf(false),
    passed: verdicts.filter(Boolean).length,
    done: counted.length,
    goal: volume.perSession,
  };
}

/** Every so many passes in a row are worth a word. */
const ROW = 3;

/** No rehearsal is left before the goal: it is reached, or only balls that are due are. */
const isLastOfGoal = ({ done, goal }: SessionCount, { next, toGo }: LedgerStatus): boolean =>
  done <= goal && goal - done <= (next === 'ball' ? (toGo ?? 0) : 0);

/**
 * Whether the pass that was counted last is praised in words, or its tone is enough: the first pass, each third in a
 * row, the last of the session's goal. Common practice (feedback that fades), no source for these numbers.
 */
export const isPraised = (count: SessionCount, status: LedgerStatus): boolean =>
  count.passed === 1 ||
  (count.inARow > 0 && count.inARow % ROW === 0) ||
  isLastOfGoal(count, status);

/** Fewer than these are no volume to rest in. */
const LEAST_GOAL = 4;

/** The repetition that was counted last is the one at half of the goal. */
export const isHalfDone = ({ done, goal }: SessionCount): boolean =>
  goal >= LEAST_GOAL && done === Math.ceil(goal / 2);
