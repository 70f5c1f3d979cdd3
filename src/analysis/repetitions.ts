import { addToLedger, ledgerOf } from '../coaching/ledger.ts';
import { markLedger } from '../coaching/marks.ts';
import { judgeRehearsal } from '../coaching/judge.ts';
import type { SessionEvent } from '../sensors/sessionEvent.ts';
import type { AnalysedSwing, SwingReadings } from '../swings/analyseSwing.ts';
import type { RepetitionFlag } from '../swings/repetition.ts';
import type { AnalysisOutput } from './contract.ts';
import type { JudgedRepetition } from './result.ts';
import type { AnalysisState } from './state.ts';
import { warningStands, watchPractice } from './warn.ts';

/** A heading re-zeroed longer ago than this has drifted by a few degrees, s. */
const DRIFT_AFTER_S = 180;

type Emit = (output: AnalysisOutput) => void;

/** A swing has ended and was analysed: number it, judge it, enter it in the ledger. */
export function takeSwing(state: AnalysisState, readings: SwingReadings, emit: Emit): void {
  const index = state.repetitions.length + 1;
  const numbered = (swing: AnalysedSwing): JudgedRepetition =>
    judged(state, { ...swing, flags: [...swing.flags, ...headingFlags(state, swing)] }, index);
  const repetition = numbered(readings.detected);
  const others = readings.others.map(numbered);
  state.repetitions.push(repetition);
  state.others.push(others);
  addToLedger(state.ledger, repetition);
  emit({ kind: 'repetition', repetition, others });
  emit({ kind: 'ledger', ledger: ledgerOf(state.ledger) });
  state.marksUntold = false;
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

function headingFlags(
  { rezero: { lastS, astray } }: AnalysisState,
  { startS, flags }: AnalysedSwing,
): readonly RepetitionFlag[] {
  if (astray) return flags.includes('gap') ? [] : ['gap'];
  return lastS !== null && startS - lastS > DRIFT_AFTER_S ? ['drift'] : [];
}

/** The user says what a repetition was, or takes that back; told by `tellMarks`. */
export function takeMark(state: AnalysisState, event: SessionEvent): void {
  if (markLedger(state.ledger, state.repetitions, event)) state.marksUntold = true;
}

/** The ledger after marks is told at most so often, s of session time: it costs as much as it is long. */
const TELL_EVERY_S = 0.5;

/** Tells the ledger where marks have changed it. @param timeS session s; `null` at the end, where nothing waits */
export function tellMarks(state: AnalysisState, timeS: number | null, emit: Emit): void {
  if (!state.marksUntold) return;
  if (timeS !== null && timeS - state.marksToldS < TELL_EVERY_S) return;
  state.marksUntold = false;
  state.marksToldS = timeS ?? state.marksToldS;
  emit({ kind: 'ledger', ledger: ledgerOf(state.ledger) });
}
