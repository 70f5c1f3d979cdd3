import type { JudgedRepetition } from '../coaching/judgement.ts';
import {
  type CorrectedKind,
  type LedgerBook,
  addToLedger,
  canUndo,
  correctLedger,
  emptyLedger,
  ledgerEntries,
  ledgerOf,
  ledgerStatus,
  undoCorrection,
} from '../coaching/ledger.ts';
import type { Plan } from '../coaching/plan.ts';
import { type LedgerView, STRIP_LENGTH, type StripEntry } from './view.ts';

/** The ledger of a practice and how its rehearsals were judged. Written in place. */
export interface PracticeBook {
  ledger: LedgerBook;
  readonly passed: Map<number, boolean | null>;
}

export const newBook = (plan: Plan): PracticeBook => ({
  ledger: emptyLedger(plan),
  passed: new Map(),
});

export function bookRepetition(book: PracticeBook, repetition: JudgedRepetition): void {
  book.ledger = addToLedger(book.ledger, repetition);
  const passed = repetition.kind === 'rehearsal' ? repetition.verdict.passed : null;
  book.passed.set(repetition.index, passed);
}

/** False where no repetition has that number. */
export function bookCorrection(book: PracticeBook, index: number, kind: CorrectedKind): boolean {
  if (!book.passed.has(index)) return false;
  book.ledger = correctLedger(book.ledger, index, kind);
  return true;
}

/** False where there is nothing to take back. */
export function bookUndo(book: PracticeBook): boolean {
  if (!canUndo(book.ledger)) return false;
  book.ledger = undoCorrection(book.ledger);
  return true;
}

export function ledgerView({ ledger }: PracticeBook): LedgerView {
  const whole = ledgerOf(ledger);
  return {
    ...whole,
    entries: whole.entries.slice(-STRIP_LENGTH),
    ...ledgerStatus(ledger),
    canUndo: canUndo(ledger),
  };
}

export const stripView = ({ ledger, passed }: PracticeBook): readonly StripEntry[] =>
  ledgerEntries(ledger)
    .slice(-STRIP_LENGTH)
    .map(({ index, kind, corrected }) => ({
      index,
      kind,
      corrected: corrected !== null,
      passed: kind === 'rehearsal' ? (passed.get(index) ?? null) : null,
    }));
