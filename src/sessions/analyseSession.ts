import { setImmediate } from 'node:timers/promises';
import {
  type AnalysisState,
  finish,
  lastTimeS,
  result,
  start,
  step,
} from '../analysis/analysis.ts';
import type { AnalysisOutput } from '../analysis/contract.ts';
import { type RepetitionLabel, labelRepetitions } from '../analysis/labels.ts';
import { ANALYSIS, type AnalysisResult, withSaid } from '../analysis/result.ts';
import type { Plan } from '../coaching/plan.ts';
import type { RecordedSession } from './openSession.ts';
import { VERSION } from './version.ts';

export interface AnalyseOptions {
  /** Hears every output as it comes. */
  readonly emit?: (output: AnalysisOutput) => void;
  /** Also emits every instant's pose and angles. */
  readonly frames?: boolean;
  /** Called about every ten seconds of recording with the session time reached, s. */
  readonly progress?: (timeS: number) => void;
  /** What a person said afterwards that repetitions were: each is measured and counted as that. */
  readonly labels?: readonly RepetitionLabel[];
}

const PROGRESS_S = 10;
const ignore = () => {};

/** Runs a recording through the analysis, as live practice does: the result is the very same. */
export async function analyseSession(
  session: RecordedSession,
  plan: Plan,
  options: AnalyseOptions = {},
): Promise<AnalysisResult> {
  const emit = options.emit ?? ignore;
  const state = start({
    hand: session.header.hand,
    plan,
    ...(session.known !== null && { known: session.known }),
    ...(session.before.history !== null && { history: session.before.history }),
    ...(options.frames === true ? { emitFrames: true } : {}),
  });
  for await (const reachedS of stepAll(session, state, emit)) options.progress?.(reachedS);
  finish(state, emit);
  labelRepetitions(state, options.labels ?? []);
  const whole = withSaid(result(state, session.header.id), session.before.warnings);
  const { length: events } = session.events;
  return { ...whole, madeBy: { version: VERSION, analysis: ANALYSIS, events } };
}

async function* stepAll(
  session: RecordedSession,
  state: AnalysisState,
  emit: (output: AnalysisOutput) => void,
): AsyncGenerator<number> {
  let toldS = 0;
  for await (const batch of session.inputs()) {
    for (const input of batch) step(state, input, emit);
    // A service has a practice or pages to serve meanwhile.
    await setImmediate();
    const reachedS = lastTimeS(state);
    if (reachedS - toldS < PROGRESS_S) continue;
    toldS = reachedS;
    yield toldS;
  }
}
