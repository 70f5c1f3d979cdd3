import { whyNotCounted } from '../../coaching/notCounted.ts';
import type { Plan } from '../../coaching/plan.ts';
import {
  type CorrectedKind,
  addToLedger,
  correctLedger,
  emptyLedger,
  ledgerOf,
} from '../../coaching/ledger.ts';
import { detectedKind, isCounted } from '../../coaching/asSaid.ts';
import type { AnalysisResult, JudgedRepetition } from '../../analysis/result.ts';
import { CORRECTED, type Relabel } from '../../streaming/hubContract/review.ts';
import type { SessionSummary } from '../../streaming/sessionsContract.ts';
import type { SessionTable } from '../db/tables.ts';

/** One session as the pages get it. */
export const summaryOf = (row: SessionTable, demonstration: boolean): SessionSummary => ({
  id: row.id,
  name: row.name,
  startedAt: new Date(row.startedMs).toISOString(),
  durationS: row.durationS,
  hand: row.hand,
  simulated: row.simulated === 1,
  notCounted: whyNotCounted(
    {
      simulated: row.simulated === 1,
      recording: false,
      analysed: row.analysed === 1,
      problem: row.problem,
    },
    demonstration,
  ),
  state: 'complete',
  deleted: false,
  analysed: row.analysed === 1,
  problem: row.problem,
  rehearsals: row.rehearsals,
  balls: row.balls,
  practiceSwings: row.practiceSwings,
  scored: row.scored,
  passed: row.passed,
  warnings: row.warnings,
  ballsInMix: row.ballsInMix,
  mixKept: row.balls === 0 ? null : row.ballsInMix === row.balls,
  ledger: row.ledger,
  note: row.note,
  painBefore: row.painBefore,
  painAfter: row.painAfter,
});

/**
 * What is counted at once when a kind is set by hand; verdicts of new rehearsals come with the analysis that follows.
 * @param changed index of the repetition that was just set or taken back: what the analysis has for it is no longer so
 */
export function countsWith(
  { repetitions }: Pick<AnalysisResult, 'repetitions'>,
  plan: Plan,
  relabels: readonly Pick<Relabel, 'index' | 'kind'>[],
  changed: number,
): Pick<SessionTable, 'rehearsals' | 'balls' | 'ballsInMix' | 'ledger' | 'scored' | 'passed'> {
  const set = new Map(relabels.map(({ index, kind }) => [index, CORRECTED[kind]]));
  const kindOf = (r: JudgedRepetition): CorrectedKind => {
    const said = r.index === changed ? detectedKind(r) : isCounted(r) ? r.kind : 'ignored';
    return set.get(r.index) ?? said;
  };
  const book = repetitions.reduce(
    (b, r) => correctLedger(addToLedger(b, r), r.index, kindOf(r)),
    emptyLedger(plan),
  );
  const { rehearsals, balls, ballsInMix, entries } = ledgerOf(book);
  const verdicts = repetitions.flatMap((r) =>
    r.kind === 'rehearsal' && kindOf(r) === 'rehearsal' ? [r.verdict.passed] : [],
  );
  return {
    rehearsals,
    balls,
    ballsInMix,
    ledger: entries,
    scored: verdicts.filter((passed) => passed !== null).length,
    passed: verdicts.filter((passed) => passed === true).length,
  };
}
