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
  const away = (r: R): number => Math.abs(r.topS - topS);
  const [nearest] = [...repetitions].sort((a, b) => away(a) - away(b));
  return nearest !== undefined && away(nearest) <= SAME_S ? nearest : null;
}

/** Enters labels in the ledger; one whose repetition is not there is passed over. */
export function labelRepetitions(state: AnalysisState, labels: readonly RepetitionLabel[]): void {
  for (const { topS, kind } of labels) {
    const found = repetitionAt(state.repetitions, topS);
    if (found !== null) state.ledger = correctLedger(state.ledger, found.index, kind);
  }
}

export type KindByIndex = ReadonlyMap<number, CorrectedKind>;

/** The kinds that a person corrected, by index. */
export const labelsOf = ({ ledger }: Pick<AnalysisState, 'ledger'>): KindByIndex =>
  new Map(
    ledgerEntries(ledger).flatMap((e) => (e.corrected === null ? [] : [[e.index, e.corrected]])),
  );

/**
 * The repetitions whose measures count, as what they count. A practice swing called a ball was measured as a ball is
 * (top to delivery). A rehearsal called a ball, or a ball called a rehearsal, was measured between other instants:
 * it is counted in the ledger, its measures are left out.
 */
export const asLabelled = (
  repetitions: readonly JudgedRepetition[],
  labels: KindByIndex,
): readonly JudgedRepetition[] =>
  repetitions.flatMap((r) => {
    const kind = labels.get(r.index) ?? r.kind;
    if (kind === r.kind) return [r];
    if (r.kind === 'practiceSwing' && kind === 'ball')
      return [{ ...r, kind, impactS: r.deliveryS }];
    return [];
  });
