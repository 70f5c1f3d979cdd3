import type { ImuSample } from '../sample.ts';
import type { Answer } from './asked.ts';
import {
  type ClockState,
  type DeviceClock,
  createClock,
  isOfThisRun,
  observePacket,
} from './clock.ts';
import { type ClockLine, onLine } from './envelope.ts';
import { type ClockPairs, createClockPairs, offLineMs, takePair } from './pairs.ts';
import {
  type WholeFit,
  type WholeFitState,
  createWholeFit,
  takeArrival,
  takeQuestion,
  wholeFit,
} from './wholeFit.ts';

/** A sample's times, as a recording keeps them. */
export type RecordedTimes = Pick<ImuSample, 'timeS' | 'deviceTimeS' | 'arrivalTimeS'>;

/** The final fit over one unbroken run of a device clock within a recording. */
export interface ClockRun extends WholeFit {
  readonly kind: DeviceClock;
  /** Recorded session time of its first and last sample, s. */
  readonly fromS: number;
  readonly untilS: number;
  /** Packets that came at the same instant count as one. */
  readonly packets: number;
  readonly answers: number;
  /** 95th percentile of |recorded session time - the fit's|, ms. */
  readonly movedMs: number;
}

interface OpenRun {
  readonly fit: WholeFitState;
  readonly pairs: ClockPairs;
  readonly fromS: number;
  untilS: number;
  packets: number;
  answers: number;
}

/** The packet whose samples are coming: its first session time and the times of its latest sample, s. */
interface OpenPacket {
  readonly fromS: number;
  readonly arrivalS: number;
  deviceS: number;
  timeS: number;
}

/** One sensor's clock over a whole recording, from the raw times that it keeps; plain data. */
export interface WholeClockState {
  readonly nominalHz: number | null;
  /** Sees where the device's clock began anew. */
  clock: ClockState | null;
  packet: OpenPacket | null;
  run: OpenRun | null;
  readonly runs: ClockRun[];
  samples: number;
}

/** @param nominalHz of a device that sends no time of its own: its samples are counted; `null`: no fit for such a one */
export const createWholeClock = (nominalHz: number | null): WholeClockState => ({
  nominalHz,
  clock: null,
  packet: null,
  run: null,
  runs: [],
  samples: 0,
});

/** Device time of a recording's `index`th sample, s; `null` where there is none. */
const deviceTimeOf = (
  sample: RecordedTimes,
  index: number,
  nominalHz: number | null,
): number | null => sample.deviceTimeS ?? (nominalHz === null ? null : index / nominalHz);

/** The recording's next sample. One without raw times tells nothing. */
export function takeTimes(state: WholeClockState, sample: RecordedTimes): void {
  const deviceS = deviceTimeOf(sample, state.samples++, state.nominalHz);
  const { arrivalTimeS: arrivalS, timeS } = sample;
  if (deviceS === null || arrivalS === null) return;
  const kind = sample.deviceTimeS === null ? 'counted' : 'stamped';
  if (state.clock?.kind !== kind) {
    closePacket(state);
    endRun(state);
    state.clock = createClock(kind);
  }
  if (state.packet?.arrivalS !== arrivalS) {
    closePacket(state);
    state.packet = { fromS: timeS, arrivalS, deviceS, timeS };
  }
  state.packet.deviceS = deviceS;
  state.packet.timeS = timeS;
}

/** An answer of the device, between the samples that came before and after it. */
export function takeAnswered(state: WholeClockState, answer: Answer): void {
  closePacket(state);
  const { run, clock } = state;
  if (!run || clock?.kind !== 'stamped' || !isOfThisRun(clock, answer.deviceS)) return;
  takeQuestion(run.fit, answer);
  run.answers += 1;
}

/** What was taken so far as runs, oldest first. */
export function clockRuns(state: WholeClockState): readonly ClockRun[] {
  closePacket(state);
  const last = state.run && finished(state.run);
  return last ? [...state.runs, last] : state.runs;
}

function closePacket(state: WholeClockState): void {
  const { packet, clock } = state;
  state.packet = null;
  if (!packet || !clock) return;
  const { deviceS, arrivalS, fromS, timeS } = packet;
  const { restarts } = clock;
  observePacket(clock, deviceS, arrivalS);
  if (clock.restarts > restarts) endRun(state);
  const run = (state.run ??= openRun(clock.kind, fromS));
  takeArrival(run.fit, { deviceS, arrivalS });
  takePair(run.pairs, deviceS, timeS);
  run.untilS = timeS;
  run.packets += 1;
}

const openRun = (kind: DeviceClock, fromS: number): OpenRun => ({
  fit: createWholeFit(kind),
  pairs: createClockPairs(),
  fromS,
  untilS: fromS,
  packets: 0,
  answers: 0,
});

function endRun(state: WholeClockState): void {
  const run = state.run && finished(state.run);
  if (run) state.runs.push(run);
  state.run = null;
}

function finished({ fit, pairs, ...run }: OpenRun): ClockRun | null {
  const line = wholeFit(fit);
  return line && { ...line, ...run, kind: fit.kind, movedMs: offLineMs(pairs, line) ?? 0 };
}

/** Gives a recording's samples their final session times, one after the other; plain data. */
export interface FinalTimes {
  readonly runs: readonly ClockRun[];
  readonly nominalHz: number | null;
  run: number;
  samples: number;
  lastS: number;
}

export const createFinalTimes = (
  runs: readonly ClockRun[],
  nominalHz: number | null,
): FinalTimes => ({ runs, nominalHz, run: 0, samples: 0, lastS: -Infinity });

/** Two runs may meet: time rises all the same, s. */
const LEAST_STEP_S = 1e-4;

/** Final session time of the next sample, s: strictly rising. One without raw times keeps the time that it has. */
export function finalTimeS(state: FinalTimes, sample: RecordedTimes): number {
  const deviceS = deviceTimeOf(sample, state.samples++, state.nominalHz);
  while (sample.timeS >= (state.runs[state.run + 1]?.fromS ?? Infinity)) state.run += 1;
  const line: ClockLine | undefined = state.runs[state.run];
  const timeS =
    line && deviceS !== null && sample.arrivalTimeS !== null ? onLine(line, deviceS) : sample.timeS;
  state.lastS = Math.max(timeS, state.lastS + LEAST_STEP_S);
  return state.lastS;
}
