import type { AnalysisInput } from '../../src/analysis/contract.ts';
import type { SessionEvent } from '../../src/sensors/sessionEvent.ts';

/** The inputs of a recording with more events, each where its time is. @param events oldest first */
export function* mergeEvents(
  inputs: readonly AnalysisInput[],
  events: readonly SessionEvent[],
): Generator<AnalysisInput> {
  let at = 0;
  for (const input of inputs) {
    const timeS = input.kind === 'sample' ? input.sample.timeS : -Infinity;
    for (; at < events.length && events[at]!.onsetS <= timeS; at++)
      yield { kind: 'event', event: events[at]! };
    yield input;
  }
  for (; at < events.length; at++) yield { kind: 'event', event: events[at]! };
}
