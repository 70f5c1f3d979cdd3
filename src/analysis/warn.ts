import { jointAngles } from '../body/angles.ts';
import type { BodyFrame } from '../body/segments.ts';
import type { SafetyWarning } from '../coaching/judgement.ts';
import { type Stage, watchOwnRange, addWarning } from '../coaching/rangeWatch.ts';
import { NO_HISTORY, missedWarning, painWarning, volumeWarning } from '../coaching/warnings.ts';
import type { SessionEvent } from '../sensors/sessionEvent.ts';
import type { AnalysisOutput } from './contract.ts';
import type { AnalysisState } from './state.ts';

type Emit = (output: AnalysisOutput) => void;

function raise(state: AnalysisState, warning: SafetyWarning | null, emit: Emit): void {
  if (warning === null) return;
  emit({ kind: 'warning', warning: addWarning(state.warnings, warning) });
}

/** The angles of one instant against the student's own comfortable range, where the plan has one. */
export function watchRange(state: AnalysisState, frame: BodyFrame, emit: Emit): void {
  const { plan } = state.settings;
  const { phase } = state.swinging.detector;
  // bending to a ball or walking is not the drill
  const swinging = phase !== 'waiting';
  if (frame.gap || !swinging || Object.keys(plan.ownRange).length === 0) return;
  const stage: Stage = phase === 'address' ? 'before' : phase === 'top' ? 'hold' : 'moving';
  const angles = jointAngles(frame.thorax, frame.humerus, 0);
  for (const w of watchOwnRange(state.ownRange, stage, angles, frame.timeS, plan))
    raise(state, w, emit);
}

/** After each repetition: volume and missed catches. */
export function watchPractice(state: AnalysisState, atS: number, emit: Emit): void {
  const { plan, history } = state.settings;
  const rehearsals = state.repetitions.filter((r) => r.kind === 'rehearsal');
  const counted = state.repetitions.filter((r) => r.kind !== 'practiceSwing').length;
  const latest = state.repetitions.at(-1);
  if (latest?.kind === 'rehearsal') raise(state, missedWarning(rehearsals), emit);
  if (latest?.kind !== 'practiceSwing')
    raise(state, volumeWarning(counted, history ?? NO_HISTORY, plan, atS), emit);
}

export function takePain(state: AnalysisState, event: SessionEvent, emit: Emit): void {
  if (event.value === null) return;
  const report = {
    rating: event.value,
    atStart: state.painAtStart,
    signs: event.signs ?? [],
    atS: event.onsetS,
  };
  state.painAtStart ??= event.value;
  raise(state, painWarning(report), emit);
}

/** Repetitions that a warning of the own range stands for; a choice. */
const RANGE_STANDS = 3;

/**
 * Acknowledging is not in a recording, so a warning stands by rule: pain and volume to the session's
 * end, the own range for the next repetitions. Missed catches ask for a shorter drop only.
 */
export const warningStands = (state: AnalysisState): boolean =>
  state.warnings.some((w) => {
    if (w.id === 'missed') return false;
    if (w.id !== 'own-range' && w.id !== 'trunk-own-range') return true;
    return state.repetitions.filter((r) => r.startS > (w.lastS ?? w.atS)).length < RANGE_STANDS;
  });
