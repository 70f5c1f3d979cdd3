import { addToLedger, correctLedger, ledgerOf } from '../coaching/ledger.ts';
import { judgeRehearsal } from '../coaching/judge.ts';
import type { SessionEvent } from '../sensors/sessionEvent.ts';
import type { AnalysedSwing } from '../swings/analyseSwing.ts';
import type { RepetitionFlag } from '../swings/repetition.ts';
import type { AnalysisOutput } from './contract.ts';
import type { JudgedRepetition } from './result.ts';
import type { AnalysisState } from './state.ts';
import { warningStands, watchPractice } from './warn.ts';

/** A heading re-zeroed longer ago than this has drifted by a few degrees, s. */
const DRIFT_AFTER_S = 180;
/** A mark by hand means the latest repetition that ended no longer ago than this, s. */
const MARK_REACH_S = 60;

type Emit = (output: AnalysisOutput) => void;

/** A swing has ended and was analysed: number it, judge it, enter it in the ledger. */
export function takeSwing(state: AnalysisState, swing: AnalysedSwing, emit: Emit): void {
  const index = state.repetitions.length + 1;
  const flags = [...swing.flags, ...driftFlag(state, swing.startS)];
  const repetition = judged(state, { ...swing, flags }, index);
  state.repetitions.push(repetition);
  state.ledger = addToLedger(state.ledger, repetition);
  emit({ kind: 'repetition', repetition });
  emit({ kind: 'ledger', ledger: ledgerOf(state.ledger) });
  watchPractice(state, repetition.endS, emit);
}

function judged(state: AnalysisState, swing: AnalysedSwing, index: number): JudgedRepetition {
  if (swing.kind !== 'rehearsal') return { index, ...swing };
  const rehearsal = { index, ...swing };
  return {
    ...rehearsal,
    verdict: judgeRehearsal(rehearsal, state.settings.plan, warningStands(state)),
  };
}

function driftFlag(state: AnalysisState, startS: number): readonly RepetitionFlag[] {
  const { lastS } = state.rezero;
  return lastS !== null && startS - lastS > DRIFT_AFTER_S ? ['drift'] : [];
}

/** The user says what the latest repetition was. */
export function takeMark(state: AnalysisState, event: SessionEvent, emit: Emit): void {
  const latest = state.repetitions.at(-1);
  if (!latest || event.onsetS - latest.endS > MARK_REACH_S) return;
  const kind = event.type === 'mark-ball' ? 'ball' : 'rehearsal';
  state.ledger = correctLedger(state.ledger, latest.index, kind);
  emit({ kind: 'ledger', ledger: ledgerOf(state.ledger) });
}
