import type { SessionEvent, SessionEventType } from '../sensors/sessionEvent.ts';
import type { Repetition } from '../swings/repetition.ts';
import { type CorrectedKind, type LedgerBook, correctLedger, undoCorrection } from './ledger.ts';

/** A person's corrections as session events. */
const MARKS = {
  ball: 'mark-ball',
  rehearsal: 'mark-rehearsal',
  practiceSwing: 'mark-practiceSwing',
  ignored: 'mark-ignore',
} as const satisfies Record<CorrectedKind, SessionEventType>;

const KINDS = Object.entries(MARKS) as readonly [CorrectedKind, SessionEventType][];
/** The kind that a mark names; `null` for any other event. */
export const markedKind = (type: SessionEventType): CorrectedKind | null =>
  KINDS.find(([, mark]) => mark === type)?.[0] ?? null;

type Span = Pick<Repetition, 'index' | 'startS' | 'endS'>;

const middleOf = (r: Span): number => (r.startS + r.endS) / 2;

/** An instantaneous mark means the latest repetition that ended no longer ago than this, s. */
const REACH_S = 60;

export const isMark = ({ type }: SessionEvent): boolean =>
  type === 'mark-undo' || markedKind(type) !== null;

/** The correction as an event: from the middle of the repetition it means to when it was said (session s). */
export const markOf = (repetition: Span, kind: CorrectedKind, saidS: number): SessionEvent => ({
  type: MARKS[kind],
  onsetS: middleOf(repetition),
  durationS: Math.max(0, saidS - middleOf(repetition)),
  value: null,
});

export const undoMark = (saidS: number): SessionEvent => ({
  type: 'mark-undo',
  onsetS: saidS,
  durationS: 0,
  value: null,
});

function meantBy<R extends Span>(repetitions: readonly R[], event: SessionEvent): R | undefined {
  const { onsetS, durationS } = event;
  const away = (r: R): number => Math.abs(middleOf(r) - onsetS);
  const within = repetitions.filter((r) => r.startS <= onsetS && onsetS <= r.endS);
  const [nearest] = within.sort((a, b) => away(a) - away(b));
  if (nearest !== undefined || durationS > 0) return nearest;
  const latest = repetitions.at(-1);
  return latest !== undefined && onsetS - latest.endS <= REACH_S ? latest : undefined;
}

/** Enters a mark in the ledger; false where it means nothing in it. */
export function markLedger(
  book: LedgerBook,
  repetitions: readonly Span[],
  event: SessionEvent,
): boolean {
  const { length } = book.events;
  const kind = markedKind(event.type);
  const meant = kind === null ? undefined : meantBy(repetitions, event);
  if (event.type === 'mark-undo') undoCorrection(book);
  else if (kind !== null && meant !== undefined) correctLedger(book, meant.index, kind);
  return book.events.length > length;
}
