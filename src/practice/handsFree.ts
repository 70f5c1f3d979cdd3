import type { Phase } from '../analysis/contract.ts';
import type { ImuSample } from '../sensors/sample.ts';
import { stepDoubleTap } from '../swings/doubleTap.ts';
import { pauseOrResume } from './pausing.ts';
import type { Run } from './run.ts';

/** While a golfer swings, holds or lets go, a knock is part of it. */
export const TAP_PHASES: readonly Phase[] = ['waiting', 'address', 'caught', 'paused'];

/** A double tap on the chest sensor pauses, and the next one resumes, where that was asked for. */
export function listenForTaps<S>(run: Run<S>, batch: readonly ImuSample[]): void {
  const { taps } = run;
  if (taps === null) return;
  for (const sample of batch) if (stepDoubleTap(taps, sample) !== null) takeTap(run);
}

function takeTap<S>(run: Run<S>): void {
  const { phase } = run.draft.view.phase;
  if (TAP_PHASES.includes(phase)) pauseOrResume(run, phase === 'paused' ? 'resume' : 'pause');
}
