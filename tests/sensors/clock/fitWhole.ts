import type { Answer } from '../../../src/sensors/clock/asked.ts';
import type { DeviceClock } from '../../../src/sensors/clock/clock.ts';
import type { Arrival } from '../../../src/sensors/clock/envelope.ts';
import {
  createWholeFit,
  takeArrival,
  takeQuestion,
  wholeFit,
  type WholeFit,
} from '../../../src/sensors/clock/wholeFit.ts';

/** The final fit over one run of packets, at least one. */
export function fitWhole(
  run: readonly Arrival[],
  kind: DeviceClock = 'stamped',
  answers: readonly Answer[] = [],
): WholeFit {
  const state = createWholeFit(kind);
  for (const p of run) takeArrival(state, p);
  for (const answer of answers) takeQuestion(state, answer);
  const fit = wholeFit(state);
  if (!fit) throw new RangeError('no packet');
  return fit;
}
