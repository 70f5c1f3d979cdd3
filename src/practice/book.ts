import type { AnalysisOutput } from '../analysis/contract.ts';
import { asSaid } from '../coaching/asSaid.ts';
import type { JudgedRepetition, SafetyWarning } from '../coaching/judgement.ts';
import {
  type LedgerBook,
  type LedgerEntry,
  addToLedger,
  canUndo,
  emptyLedger,
  ledgerEntries,
  ledgerOf,
  ledgerStatus,
} from '../coaching/ledger.ts';
import { markLedger } from '../coaching/marks.ts';
import type { Plan } from '../coaching/plan.ts';
import { sessionCount } from '../coaching/sessionCount.ts';
import { summarise } from '../coaching/summary.ts';
import type { SessionEvent } from '../sensors/sessionEvent.ts';
import type { RepetitionMoments } from './moments.ts';
import { type LedgerView, STRIP_LENGTH, type StripEntry, type SummaryView } from './view.ts';

/** The ledger of a practice and all its repetitions by number. Written in place. */
export interface PracticeBook {
  readonly plan: Plan;
  readonly ledger: LedgerBook;
  readonly repetitions: Map<number, JudgedRepetition>;
  /** Each measured as the other kinds. */
  readonly others: Map<number, readonly JudgedRepetition[]>;
  readonly moments: Map<number, RepetitionMoments>;
}

export const newBook = (plan: Plan): PracticeBook => ({
  plan,
  ledger: emptyLedger(plan),
  repetitions: new Map(),
  others: new Map(),
  moments: new Map(),
});

export function bookRepetition(
  book: PracticeBook,
  { repetition, others }: Omit<Extract<AnalysisOutput, { readonly kind: 'repetition' }>, 'kind'>,
  moments: RepetitionMoments,
): void {
  addToLedger(book.ledger, repetition);
  book.repetitions.set(repetition.index, repetition);
  book.others.set(repetition.index, others);
  book.moments.set(repetition.index, moments);
}

/** A person's correction, or its undoing. */
export function bookMark(book: PracticeBook, event: SessionEvent): void {
  markLedger(book.ledger, [...book.repetitions.values()], event);
}

export function ledgerView(book: PracticeBook): LedgerView {
  const { ledger, plan } = book;
  const whole = ledgerOf(ledger);
  return {
    ...whole,
    entries: whole.entries.slice(-STRIP_LENGTH),
    ...ledgerStatus(ledger),
    ...sessionCount(entriesOf(book), plan),
    canUndo: canUndo(ledger),
  };
}

function passedOf(repetition: JudgedRepetition | undefined): boolean | null {
  return repetition?.kind === 'rehearsal' ? repetition.verdict.passed : null;
}

/** All repetitions as they stand, oldest first. */
const entriesOf = (book: PracticeBook): readonly StripEntry[] =>
  ledgerEntries(book.ledger).map((entry) => ({
    index: entry.index,
    kind: entry.kind,
    corrected: entry.corrected !== null,
    passed: entry.kind === 'rehearsal' ? passedOf(standing(book, entry)) : null,
  }));

export const stripView = (book: PracticeBook): readonly StripEntry[] =>
  entriesOf(book).slice(-STRIP_LENGTH);

/** A repetition as what it stands for. */
function standing(
  { repetitions, others }: PracticeBook,
  { index, corrected }: LedgerEntry,
): JudgedRepetition | undefined {
  const detected = repetitions.get(index);
  return detected && asSaid(detected, others.get(index) ?? [], corrected);
}

/** The summary of what is in the book. */
export function summaryView(
  book: PracticeBook,
  warnings: readonly SafetyWarning[],
  durationS: number,
): SummaryView {
  const all = ledgerEntries(book.ledger).flatMap((entry) => standing(book, entry) ?? []);
  const summary = summarise(all, ledgerOf(book.ledger), book.plan, warnings);
  const moments = (index: number | null): RepetitionMoments | null =>
    (index === null ? undefined : book.moments.get(index)) ?? null;
  return { summary, durationS, best: moments(summary.best), typical: moments(summary.typical) };
}
