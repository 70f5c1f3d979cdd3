import { asSaid } from '../coaching/asSaid.ts';
import { type CorrectedKind, correctLedger, ledgerEntries } from '../coaching/ledger.ts';
import type { JudgedRepetition } from './result.ts';
import type { AnalysisState } from './state.ts';

/** What a person says a repetition was. */
export interface RepetitionLabel {
  /** Its top, session s: another version of the analysis may count otherwise. */
  readonly topS: number;
  readonly kind: CorrectedKind;
}

/** Two tops nearer than this are the same repetition, s. */
const SAME_S = 0.5;

/** The repetition whose top is nearest, within half a second. */
export function repetitionAt<R extends Pick<JudgedRepetition, 'topS'>>(
  repetitions: readonly R[],
  topS: number,
): R | null {
  let nearest: R | null = null;
  let leastS = Infinity;
  for (const r of repetitions) {
    const awayS = Math.abs(r.topS - topS);
    if (awayS > SAME_S || awayS >= leastS) continue;
    nearest = r;
    leastS = awayS;
  }
  return nearest;
}

/** Enters labels in the ledger; one whose repetition is not there is passed over. */
export function labelRepetitions(state: AnalysisState, labels: readonly RepetitionLabel[]): void {
  for (const { topS, kind } of labels) {
    const found = repetitionAt(state.repetitions, topS);
    if (found !== null) correctLedger(state.ledger, found.index, kind);
  }
}

/** The repetitions as they stand after corrections, each measured as what it is said to be. */
export function standingRepetitions({
  repetitions,
  others,
  ledger,
}: Pick<AnalysisState, 'repetitions' | 'others' | 'ledger'>): readonly JudgedRepetition[] {
  const said = new Map(ledgerEntries(ledger).map((e) => [e.index, e.corrected]));
  return repetitions.map((r, i) => asSaid(r, others[i] ?? [], said.get(r.index) ?? null));
}
