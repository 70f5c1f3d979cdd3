import { type Random, gaussian, uniform } from '../../../math/random.ts';

/** The way of the samples to the host. */
export interface RadioModel {
  readonly samplesPerPacket: number;
  /** A packet waits for the next of these, s. */
  readonly connectionIntervalS: number;
  /** Part of packets that need another interval (and so on). */
  readonly retryShare: number;
  /** Part of packets that stall for 60-160 ms; those behind arrive in a bunch. */
  readonly stallShare: number;
  /** Least time from the sample to the host, s. */
  readonly leastDelayS: number;
  /** Part of packets lost, in runs of 1 to `longestRun`. */
  readonly lostShare: number;
  readonly longestRun: number;
  /** Spans in which nothing arrives, true time s. */
  readonly gaps: readonly { readonly fromS: number; readonly toS: number }[];
}

export const REALISTIC_RADIO: RadioModel = {
  samplesPerPacket: 2,
  connectionIntervalS: 0.015,
  retryShare: 0.04,
  stallShare: 0.001,
  leastDelayS: 0.002,
  lostShare: 0.003,
  longestRun: 2,
  gaps: [],
};

export const PERFECT_RADIO: RadioModel = {
  samplesPerPacket: 1,
  connectionIntervalS: 0,
  retryShare: 0,
  stallShare: 0,
  leastDelayS: 0,
  lostShare: 0,
  longestRun: 1,
  gaps: [],
};

export interface RadioState {
  readonly model: RadioModel;
  readonly random: Random;
  readonly phaseS: number;
  lastArrivalS: number;
  /** Packets still to be lost of a run. */
  losing: number;
}

export const createRadio = (random: Random, model: RadioModel): RadioState => ({
  model,
  random,
  phaseS: uniform(random, 0, model.connectionIntervalS),
  lastArrivalS: -Infinity,
  losing: 0,
});

function isLost(state: RadioState): boolean {
  const { model, random } = state;
  if (state.losing > 0) {
    state.losing--;
    return true;
  }
  // Runs of 1..n are equally likely, so a run starts this often:
  if (random() >= model.lostShare / ((1 + model.longestRun) / 2)) return false;
  state.losing = Math.floor(random() * model.longestRun);
  return true;
}

/** Host time at which a packet whose last sample was taken at `readyS` arrives; `null` if it is lost. */
export function sendPacket(state: RadioState, readyS: number): number | null {
  const { model, random, phaseS } = state;
  const lost = isLost(state);
  const interval = model.connectionIntervalS;
  let tries = 0;
  while (random() < model.retryShare) tries++;
  const stallS = random() < model.stallShare ? uniform(random, 0.06, 0.16) : 0;
  const jitterS = interval === 0 ? 0 : 0.0004 * Math.abs(gaussian(random));
  if (lost || model.gaps.some((g) => readyS >= g.fromS && readyS < g.toS)) return null;
  const free = readyS + model.leastDelayS + stallS;
  const slot =
    interval === 0 ? free : phaseS + (Math.ceil((free - phaseS) / interval) + tries) * interval;
  state.lastArrivalS = Math.max(slot + jitterS, state.lastArrivalS);
  return state.lastArrivalS;
}
