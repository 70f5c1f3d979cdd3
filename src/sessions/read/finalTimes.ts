import type { Answer } from '../../sensors/clock/asked.ts';
import {
  type ClockRun,
  type RecordedTimes,
  clockRuns,
  createFinalTimes,
  createWholeClock,
  finalTimeS,
  takeAnswered,
  takeTimes,
} from '../../sensors/clock/wholeClock.ts';
import { SLOT_COUNT } from './channels.ts';
import { orNull } from './merge.ts';
import type { MotionBlock } from './motionBlocks.ts';

/** The final clock fit of one track: a pass over all its rows. */
export async function fitTrack(
  blocks: AsyncIterable<MotionBlock>,
  answers: readonly Answer[],
  nominalHz: number | null,
): Promise<readonly ClockRun[]> {
  const whole = createWholeClock(nominalHz);
  let next = 0;
  for await (const block of blocks)
    for (let row = 0; row < block.rows; row++) {
      const times = timesOf(block, row);
      const { arrivalTimeS } = times;
      for (let a = answers[next]; a && arrivalTimeS !== null && a.sentS < arrivalTimeS;) {
        takeAnswered(whole, a);
        a = answers[++next];
      }
      takeTimes(whole, times);
    }
  return clockRuns(whole);
}

/** The same rows with the session times of the final fit, in place. */
export async function* atFinalTimes(
  blocks: AsyncIterable<MotionBlock>,
  runs: readonly ClockRun[],
  nominalHz: number | null,
): AsyncGenerator<MotionBlock> {
  const final = createFinalTimes(runs, nominalHz);
  for await (const block of blocks) {
    for (let row = 0; row < block.rows; row++)
      block.values[row * SLOT_COUNT] = finalTimeS(final, timesOf(block, row));
    yield block;
  }
}

function timesOf({ values }: MotionBlock, row: number): RecordedTimes {
  const base = row * SLOT_COUNT;
  return {
    timeS: values[base] as number,
    deviceTimeS: orNull(values[base + 7] as number),
    arrivalTimeS: orNull(values[base + 8] as number),
  };
}
