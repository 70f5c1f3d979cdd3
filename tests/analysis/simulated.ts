import { finish, result, start, step } from '../../src/analysis/analysis.ts';
import type { AnalysisInput, AnalysisOutput } from '../../src/analysis/contract.ts';
import type { AnalysisResult } from '../../src/analysis/result.ts';
import { DEFAULT_PLAN, type Plan } from '../../src/coaching/plan.ts';
import type { SessionEvent } from '../../src/sensors/sessionEvent.ts';
import { simulateSession } from '../../src/sensors/sources/synthetic/index.ts';

type Options = Parameters<typeof simulateSession>[0];

const timeOf = (i: AnalysisInput): number =>
  i.kind === 'sample' ? i.sample.timeS : i.event.onsetS + i.event.durationS;

/** A simulated session as the chain's inputs, in order of session time. */
export function inputsOf(options: Options): AnalysisInput[] {
  const session = simulateSession(options);
  const samples = session.packets.flatMap((p) =>
    p.samples.map((sample): AnalysisInput => ({ kind: 'sample', sample })),
  );
  const events = session.events.map((event): AnalysisInput => ({ kind: 'event', event }));
  return [...samples, ...events].sort((a, b) => timeOf(a) - timeOf(b));
}

export interface Run {
  readonly result: AnalysisResult;
  readonly outputs: AnalysisOutput[];
}

export function analyse(
  inputs: readonly AnalysisInput[],
  settings: { hand?: 'left' | 'right'; plan?: Plan; emitFrames?: boolean } = {},
): Run {
  const state = start({ hand: 'right', plan: DEFAULT_PLAN, ...settings });
  const outputs: AnalysisOutput[] = [];
  const emit = (o: AnalysisOutput) => outputs.push(o);
  for (const input of inputs) step(state, input, emit);
  finish(state, emit);
  return { result: result(state, 'test'), outputs };
}

/** The same inputs with one more event at its time. */
export function withEvent(
  inputs: readonly AnalysisInput[],
  type: SessionEvent['type'],
  onsetS: number,
  value: number | null = null,
): AnalysisInput[] {
  const event: AnalysisInput = { kind: 'event', event: { type, onsetS, durationS: 0, value } };
  const at = inputs.findIndex((i) => timeOf(i) >= onsetS);
  return at < 0 ? [...inputs, event] : inputs.toSpliced(at, 0, event);
}
