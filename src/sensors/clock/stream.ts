import type { Packet, PacketError, StreamFormat } from '../decode/packet.ts';
import { deviceClock } from '../decode/packet.ts';
import type { ImuSample, SensorRole } from '../sample.ts';
import {
  clockResidualMs,
  type ClockState,
  createClock,
  observeAnswer,
  observePacket,
  restartClock,
  sessionTime,
} from './clock.ts';
import type { Answer } from './asked.ts';
import { createUnwrap, unwrap, unwrapNear, type UnwrapState } from './unwrap.ts';

/** One sensor's way from packets to samples in session time; plain data. */
export interface StreamState {
  readonly sensor: SensorRole;
  readonly format: StreamFormat;
  readonly clock: ClockState;
  readonly ticks: UnwrapState | null;
  readonly sequence: UnwrapState | null;
  /** Time between two readings on the device's clock, s, as learnt. */
  spacingS: number;
  /** Device s at which the next packet's first reading is due; `null` before the first. */
  dueS: number | null;
  lastArrivalS: number | null;
  /** Of the present link. */
  firstArrivalS: number | null;
  readings: number;
  lost: number;
  saturated: number;
  malformed: number;
  /** What was wrong with the last malformed packet. */
  lastProblem: string | null;
  /** Readings that came in the last whole seconds, newest first. */
  perSecond: { second: number; readings: number }[];
}

export function createStream(sensor: SensorRole, format: StreamFormat): StreamState {
  return {
    sensor,
    format,
    clock: createClock(deviceClock(format)),
    ticks: format.ticks ? createUnwrap(format.ticks.modulus) : null,
    sequence: format.sequenceModulus === null ? null : createUnwrap(format.sequenceModulus),
    spacingS: 1 / format.rateHz,
    dueS: null,
    lastArrivalS: null,
    firstArrivalS: null,
    readings: 0,
    lost: 0,
    saturated: 0,
    malformed: 0,
    lastProblem: null,
    perSecond: [],
  };
}

/** Stamps coarser than this, s, are smoothed: readings are even, their stamps only rounded. */
const COARSE_S = 2e-4;
const SMOOTH = 0.1;
/** The spacing is learnt from whole packets, slowly. */
const LEARN = 0.02;
/** No oscillator is further off than this. */
const SPACING_TOLERANCE = 0.1;

/** By the packet counter, where there is one. */
function lostByCounter(state: StreamState, packet: Packet, arrivalS: number): number {
  if (!state.sequence || packet.sequence === null) return 0;
  const n = packet.readings.length;
  const counted = unwrap(state.sequence, packet.sequence, arrivalS, state.format.rateHz / n);
  return counted.restarted ? 0 : Math.max(0, counted.step - 1) * n;
}

/** By the stamps: finds readings that the device itself missed, too. */
const lostByStamp = (state: StreamState, stampS: number | null): number =>
  stampS === null || state.dueS === null
    ? 0
    : Math.max(0, Math.round((stampS - state.dueS) / state.spacingS));

function learnSpacing(state: StreamState, stampS: number, n: number): void {
  if (state.dueS === null || state.lastArrivalS === null) return;
  const nominal = 1 / state.format.rateHz;
  const seen = state.spacingS + (stampS - state.dueS) / n;
  if (Math.abs(seen / nominal - 1) > SPACING_TOLERANCE) return;
  state.spacingS += LEARN * (seen - state.spacingS);
}

/** Device time of the packet's first reading, s. */
function firstReadingS(state: StreamState, stampS: number | null, lost: number): number {
  const { dueS, format } = state;
  if (stampS === null) return dueS ?? 0;
  if (dueS === null) return stampS;
  const coarse = format.ticks !== null && 1 / format.ticks.perS > COARSE_S;
  const firstS = coarse && lost === 0 ? dueS + SMOOTH * (stampS - dueS) : stampS;
  // Readings never overlap those of the packet before, whatever the stamps say.
  return Math.max(firstS, dueS - state.spacingS / 2);
}

/** Unwrapped device time, s; a device that restarted has its clock fitted anew. */
function stamp(state: StreamState, packet: Packet, arrivalS: number): number | null {
  const { ticks } = state.format;
  if (!state.ticks || !ticks || packet.ticks === null) return null;
  const reading = unwrap(state.ticks, packet.ticks, arrivalS, ticks.perS);
  if (reading.restarted) {
    restartClock(state.clock);
    state.dueS = null;
    if (state.sequence) state.sequence.last = null;
  }
  return reading.value / ticks.perS;
}

function count(state: StreamState, packet: Packet, lost: number, arrivalS: number): void {
  const n = packet.readings.length;
  state.readings += n;
  state.lost += lost;
  state.saturated += packet.readings.filter((r) => r.saturated).length;
  state.firstArrivalS ??= arrivalS;
  state.lastArrivalS = arrivalS;
  const second = Math.floor(arrivalS);
  if (state.perSecond[0]?.second === second) state.perSecond[0].readings += n;
  else state.perSecond = [{ second, readings: n }, ...state.perSecond].slice(0, 11);
}

/** The same packet again: a device's clock never stands still. */
const isRepeat = (state: StreamState, packet: Packet): boolean =>
  packet.ticks !== null && state.ticks?.last?.raw === packet.ticks;

/**
 * One packet to samples, oldest first, in session time.
 * @param arrivalS host clock when the packet came, s from recording onset
 */
export function takePacket(state: StreamState, packet: Packet, arrivalS: number): ImuSample[] {
  if (isRepeat(state, packet)) return [];
  const stampS = stamp(state, packet, arrivalS);
  const byCounter = lostByCounter(state, packet, arrivalS);
  const lost = Math.max(byCounter, lostByStamp(state, stampS));
  const n = packet.readings.length;
  if (stampS !== null && lost === 0) learnSpacing(state, stampS, n);
  const firstS = firstReadingS(state, stampS, lost);
  observePacket(state.clock, firstS + (n - 1) * state.spacingS, arrivalS);
  count(state, packet, lost, arrivalS);
  state.dueS = firstS + n * state.spacingS;
  return packet.readings.map((reading, i) => {
    const deviceTimeS = firstS + i * state.spacingS;
    return {
      sensor: state.sensor,
      timeS: sessionTime(state.clock, deviceTimeS),
      ...reading,
      deviceTimeS: stampS === null ? null : deviceTimeS,
      arrivalTimeS: arrivalS,
    };
  });
}

/**
 * The device's clock stood at `ticks`, raw, when it answered a question that left at `sentS`, host s.
 * @returns the answer on the unwrapped clock; `null` where no packet has come yet
 */
export function takeClock(state: StreamState, ticks: number, sentS: number): Answer | null {
  const value = state.ticks && unwrapNear(state.ticks, ticks);
  const perS = state.format.ticks?.perS;
  if (value === null || perS === undefined) return null;
  observeAnswer(state.clock, value / perS, sentS);
  return { deviceS: value / perS, sentS };
}

/** A packet that its decoder refused. */
export function countMalformed(state: StreamState, error: PacketError): void {
  state.malformed += 1;
  state.lastProblem = error.message;
}

/**
 * A link that ended: the rate is measured anew, without the gap, and a device without a clock lost an unknown number of
 * readings.
 */
export function breakStream(state: StreamState): void {
  state.perSecond = [];
  state.firstArrivalS = null;
  if (!state.format.ticks) restartClock(state.clock);
}

export interface StreamHealth {
  readonly nominalRateHz: number;
  /** Over the last 10 whole seconds of the present link; `null` until there is one. */
  readonly measuredRateHz: number | null;
  readonly lostPct: number;
  /** `null` before the first packet. */
  readonly lastPacketAgeS: number | null;
  readonly clockResidualMs: number | null;
  readonly saturated: number;
  readonly malformed: number;
}

function measuredRateHz(state: StreamState, nowS: number): number | null {
  const begun = Math.floor(state.firstArrivalS ?? nowS) + 1;
  const until = Math.floor(nowS);
  const seconds = Math.min(10, until - begun);
  if (seconds < 1) return null;
  const within = state.perSecond.filter((p) => p.second < until && p.second >= until - seconds);
  return within.reduce((sum, p) => sum + p.readings, 0) / seconds;
}

export function streamHealth(state: StreamState, nowS: number): StreamHealth {
  const all = state.readings + state.lost;
  return {
    nominalRateHz: state.format.rateHz,
    measuredRateHz: measuredRateHz(state, nowS),
    lostPct: all === 0 ? 0 : (100 * state.lost) / all,
    lastPacketAgeS: state.lastArrivalS === null ? null : Math.max(0, nowS - state.lastArrivalS),
    clockResidualMs: clockResidualMs(state.clock),
    saturated: state.saturated,
    malformed: state.malformed,
  };
}
