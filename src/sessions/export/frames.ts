import { type AnalysisState, finish, start, step } from '../../analysis/analysis.ts';
import type { AnalysisOutput } from '../../analysis/contract.ts';
import { DEFAULT_PLAN } from '../../coaching/plan.ts';
import type { RecordedSession } from '../openSession.ts';

export type Frame = Extract<AnalysisOutput, { readonly kind: 'frame' }>;

/** Pose and angles at every instant of the chest sensor, from the end of the calibration on, in batches. */
export async function* framesOf(session: RecordedSession): AsyncGenerator<readonly Frame[]> {
  const state: AnalysisState = start({
    hand: session.header.hand,
    plan: DEFAULT_PLAN,
    emitFrames: true,
    ...(session.known !== null && { known: session.known }),
  });
  let frames: Frame[] = [];
  const emit = (output: AnalysisOutput): void => {
    if (output.kind === 'frame') frames.push(output);
  };
  for await (const batch of session.inputs()) {
    for (const input of batch) step(state, input, emit);
    yield frames;
    frames = [];
  }
  finish(state, emit);
  yield frames;
}
