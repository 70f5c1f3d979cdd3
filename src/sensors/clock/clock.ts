import {
  type AskedState,
  between,
  createAsked,
  uncertainMs,
  takeAnswer,
  takeWait,
} from './asked.ts';
import { type Bucket, fileArrival, residualMs, wholeHull } from './buckets.ts';
import { type Arrival, type ClockLine, lineUnder, lowerEnvelope, onLine } from './envelope.ts';

/**
 * `stamped`: the device sends its own time, steady as a crystal. `counted`: device time is only
 * samples counted x nominal period, which may be some percent off and loses time with lost samples.
 */
export type DeviceClock = 'stamped' | 'counted';

interface ClockTraits {
  /** The rate may be this far from nominal. */
  readonly slopeTolerance: number;
  /** Below this span, s, the known rate is better than a fitted one. */
  readonly fitFromS: number;
  readonly windowS: number;
  readonly bucketS: number;
  /** All packets later than this, s, for `LATE_FOR_S`: the device clock has lost time. */
  readonly lateS: number;
}

// Choices: 2 ms of envelope noise over 20 s is 100 ppm, the size of a crystal's error, so a fit pays from there on.
// A long window lets slow beats between packet period and connection interval pass through their shortest delay.
export const TRAITS: Readonly<Record<DeviceClock, ClockTraits>> = {
  stamped: { slopeTolerance: 0.002, fitFromS: 20, windowS: 600, bucketS: 10, lateS: 1 },
  counted: { slopeTolerance: 0.03, fitFromS: 5, windowS: 120, bucketS: 2, lateS: 0.03 },
};
const LATE_FOR_S = 3;
/** A packet this far under the line, s, cannot be luck: the device clock leapt. */
const EARLY_S = 1;
const REFIT_S = 0.25;
const WARM_S = 5;
const SLEW_WARM_S = 0.5;
const SLEW_S = 5;

/** Clock of one sensor; plain data. */
export interface ClockState {
  readonly kind: DeviceClock;
  buckets: Bucket[];
  /** What the device answered when it was asked for its time. */
  asked: AskedState;
  line: ClockLine | null;
  /** Under the arrivals alone. */
  arrivals: ClockLine | null;
  /** Device s at the last fit. */
  fittedAtS: number;
  last: Arrival | null;
  /** Device s of the first packet since the device (re)started. */
  startS: number;
  /** Device s since when every packet has been late; `null` while they are not. */
  lateSinceS: number | null;
  /** The last session time handed out: device s and session s. */
  out: { deviceS: number; sessionS: number } | null;
  /** Session time never falls below this, s. */
  floorS: number | null;
  /** How often the device clock began anew. */
  restarts: number;
}

/** A fresh clock. Use one for each sensor. */
export const createClock = (kind: DeviceClock = 'stamped'): ClockState => ({
  kind,
  buckets: [],
  asked: createAsked(),
  line: null,
  arrivals: null,
  fittedAtS: 0,
  last: null,
  startS: 0,
  lateSinceS: null,
  out: null,
  floorS: null,
  restarts: 0,
});

function trackLateness(state: ClockState, line: ClockLine, p: Arrival): void {
  const { lateS, fitFromS } = TRAITS[state.kind];
  const settled = p.deviceS - state.startS > 2 * fitFromS;
  const late = settled && p.arrivalS - onLine(line, p.deviceS) > lateS;
  state.lateSinceS = late ? (state.lateSinceS ?? p.deviceS) : null;
}

function beginsAnew(state: ClockState, p: Arrival): boolean {
  if (!state.last || !state.line) return false;
  if (p.deviceS < state.last.deviceS) return true;
  if (p.arrivalS - onLine(state.line, p.deviceS) < -EARLY_S) return true;
  trackLateness(state, state.line, p);
  return state.lateSinceS !== null && p.deviceS - state.lateSinceS > LATE_FOR_S;
}

/** Forgets the line, not the rate: for a device known to have restarted. Session time still never falls. */
export function restartClock(state: ClockState): void {
  state.buckets = [];
  state.asked = createAsked();
  state.last = null;
  state.lateSinceS = null;
  state.floorS = state.out?.sessionS ?? state.floorS;
  state.out = null;
  state.restarts += 1;
}

function fit(state: ClockState): ClockLine {
  const traits = TRAITS[state.kind];
  const hull = wholeHull(state.buckets);
  const spanS = (hull.at(-1)?.deviceS ?? 0) - state.startS;
  state.arrivals =
    spanS < traits.fitFromS
      ? lineUnder(hull, state.line?.slope ?? 1)
      : lowerEnvelope(hull, traits.slopeTolerance);
  const hereS = hull.at(-1)?.deviceS ?? 0;
  return between(state.asked, state.arrivals, traits.slopeTolerance, hereS);
}

/** An answer this far from the last packet, device s, is of another run of the device's clock. */
const SAME_RUN_S = 10;

/** Whether the device's clock can have stood there in the run under way. */
export const isOfThisRun = ({ last }: ClockState, deviceTimeS: number): boolean =>
  last !== null && Math.abs(deviceTimeS - last.deviceS) <= SAME_RUN_S;

/**
 * Takes in one answer of the device to "what time is it?".
 * @param deviceTimeS the device's clock when it answered, unwrapped as the packets' is, s
 * @param sentTimeS host clock before the question left, s from recording onset
 * Values that are not finite, or of another run of the device's clock, are ignored.
 */
export function observeAnswer(state: ClockState, deviceTimeS: number, sentTimeS: number): void {
  if (!Number.isFinite(deviceTimeS) || !Number.isFinite(sentTimeS)) return;
  if (!isOfThisRun(state, deviceTimeS)) return;
  takeAnswer(state.asked, deviceTimeS, sentTimeS, state.line);
}

/**
 * Takes in one packet's arrival.
 * @param deviceTimeS device time of the packet's last sample, unwrapped, s
 * @param arrivalTimeS host clock when it came, s from recording onset
 * Values that are not finite are ignored. A device clock that jumps back, leaps or stops is noticed and fitted anew.
 */
export function observePacket(state: ClockState, deviceTimeS: number, arrivalTimeS: number): void {
  if (!Number.isFinite(deviceTimeS) || !Number.isFinite(arrivalTimeS)) return;
  const p = { deviceS: deviceTimeS, arrivalS: arrivalTimeS };
  if (beginsAnew(state, p)) restartClock(state);
  if (!state.last) state.startS = deviceTimeS;
  const fresh = state.last === null;
  state.last = p;
  const { bucketS, windowS } = TRAITS[state.kind];
  fileArrival(state.buckets, p, bucketS, windowS);
  if (state.arrivals) takeWait(state.asked, arrivalTimeS - onLine(state.arrivals, deviceTimeS));
  const under = !state.line || arrivalTimeS < onLine(state.line, deviceTimeS);
  if (!fresh && !under && deviceTimeS - state.fittedAtS < REFIT_S) return;
  state.line = fit(state);
  state.fittedAtS = deviceTimeS;
}

/** The line is followed gently: a step in time would look like a step in speed. */
function follow(state: ClockState, line: ClockLine, deviceTimeS: number): number {
  const { out } = state;
  const target = onLine(line, deviceTimeS);
  if (!out) return Math.max(target, state.floorS === null ? target : state.floorS + 1e-4);
  const stepS = deviceTimeS - out.deviceS;
  const plainS = out.sessionS + line.slope * stepS;
  const slewS = deviceTimeS - state.startS < WARM_S ? SLEW_WARM_S : SLEW_S;
  const gain = stepS / (stepS + slewS);
  return plainS + Math.max(-stepS / 2, (target - plainS) * gain);
}

/**
 * Session time of a sample, s: strictly increasing with device time, whatever the fit learns meanwhile.
 * Call `observePacket` for the sample's packet first. `NaN` device times or a clock that has seen no packet
 * are programmer errors and throw.
 */
export function sessionTime(state: ClockState, deviceTimeS: number): number {
  const { line, out } = state;
  if (!line || !Number.isFinite(deviceTimeS))
    throw new RangeError('sessionTime needs an observed packet and a finite device time');
  if (out && deviceTimeS <= out.deviceS)
    return out.sessionS - line.slope * (out.deviceS - deviceTimeS);
  const sessionS = follow(state, line, deviceTimeS);
  state.out = { deviceS: deviceTimeS, sessionS };
  return sessionS;
}

/**
 * How far session time may be off, ms: 95th percentile of the fastest packets' distance from their line over the
 * window, and what packets in step with the connection hide; `null` before any packet.
 */
export function clockResidualMs(state: ClockState): number | null {
  const seen = state.arrivals && residualMs(state.buckets, state.arrivals);
  return seen === null ? null : uncertainMs(state.asked, seen);
}
