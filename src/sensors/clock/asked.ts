import { type Bucket, fileArrival, wholeHull } from './buckets.ts';
import { type ClockLine, lineUnder, lowerEnvelope, onLine } from './envelope.ts';

const BUCKET_S = 10;
const WINDOW_S = 300;
/** Fewer say too little. */
const NEEDED = 12;
/** From here on the answers' own rate is better than the one known. */
const FIT_FROM_S = 60;
/** Above the line under the arrivals, bins of 1 ms; no connection interval is shorter than all of them, 7.5 ms. */
const BINS = 7;
const BIN_S = 0.001;
/** Of the count, for each arrival: about the last ten seconds count. */
const FORGET = 0.999;
/** Arrivals in step leave two neighbouring bins this empty, as a share of the mean. */
const IN_STEP = { surely: 0.3, hardly: 0.6 };
const LATE_S = 0.004;
const EARLY_S = 0.001;
/** Share of a new wait in their mean. */
const SETTLE = 0.05;

/**
 * What a device's answers to "what time is it?" tell of its clock. Arrivals only say "not later than"; a question
 * says "not earlier than it was asked". Where packets and connection events are in step, arrivals all wait
 * alike and hide how long; questions leave at any time, so one of them soon meets an event at once. Plain data.
 * Source: one-way bounds from both sides, as in the clock filter of NTP (RFC 5905, section 10).
 */
export interface AskedState {
  /** Mirrored in the line of equal times, so that the same lower hull serves: 2 x device s - host s. */
  buckets: Bucket[];
  /** Questions since the device (re)started. */
  count: number;
  /** How long questions wait before they are answered, above the line and on the average, s. */
  waitS: number;
  /** How many arrivals lay how far above their line, of late. */
  waits: number[];
}

/** A device's answer to a question for its time: its clock, unwrapped, and when the question left, host s. */
export interface Answer {
  readonly deviceS: number;
  readonly sentS: number;
}

export const createAsked = (): AskedState => ({
  buckets: [],
  count: 0,
  waitS: 0,
  waits: new Array<number>(BINS).fill(0),
});

/** The device's clock stood at `deviceS` at some time after the host's clock stood at `sentS`. */
export function takeAnswer(
  state: AskedState,
  deviceS: number,
  sentS: number,
  line: ClockLine | null,
  windowS = WINDOW_S,
): void {
  fileArrival(state.buckets, { deviceS, arrivalS: 2 * deviceS - sentS }, BUCKET_S, windowS);
  state.count += 1;
  if (line === null) return;
  const waitS = Math.max(0, onLine(line, deviceS) - sentS);
  state.waitS += Math.max(SETTLE, 1 / state.count) * (waitS - state.waitS);
}

/** An arrival so far above the line under the arrivals, s. */
export function takeWait(state: AskedState, waitS: number): void {
  const bin = Math.floor(waitS / BIN_S);
  state.waits = state.waits.map((n, i) => n * FORGET + (i === bin ? 1 : 0));
}

/** 0: arrivals come at any time after the connection event before, so some come at once. 1: all wait alike. */
function inStep({ waits }: AskedState): number {
  const pairs = waits.slice(1).map((n, i) => n + (waits[i] ?? 0));
  const mean = pairs.reduce((sum, n) => sum + n, 0) / pairs.length;
  const emptiest = mean > 0 ? Math.min(...pairs) / mean : 0;
  const { surely, hardly } = IN_STEP;
  return Math.min(1, Math.max(0, (hardly - emptiest) / (hardly - surely)));
}

/**
 * How far the line may be off, ms, where the fastest arrivals lie `seenMs` from theirs. With answers it is three times
 * the soonest question's likely wait (95th percentile of even waits); without any, arrivals in step may all be late
 * by the emptiness between them, of which the first 6 ms are looked at.
 */
export function uncertainMs(state: AskedState, seenMs: number): number {
  const share = inStep(state);
  if (state.count >= NEEDED) return seenMs + share * (3000 * soonestS(state) - seenMs);
  const most = Math.max(...state.waits);
  const empty = state.waits.filter((n) => n < IN_STEP.surely * most).length;
  return Math.max(seenMs, share * empty * BIN_S * 1000);
}

/** 1 where the arrivals' line is later than any question's wait explains, or earlier than the questions allow. */
function apart(arrivals: ClockLine, asked: ClockLine, hereS: number): number {
  const lateS = onLine(arrivals, hereS) - onLine(asked, hereS);
  const excessS = lateS > 0 ? lateS - LATE_S : -lateS - EARLY_S;
  return Math.min(1, Math.max(0, excessS / EARLY_S));
}

/** The lowest line that no question lies above, of the answers' own rate once they can tell it. */
function lineAbove(state: AskedState, slope: number, tolerance: number): ClockLine {
  const hull = wholeHull(state.buckets);
  const spanS = (hull.at(-1)?.deviceS ?? 0) - (hull[0]?.deviceS ?? 0);
  const mirrored = spanS < FIT_FROM_S ? lineUnder(hull, 2 - slope) : lowerEnvelope(hull, tolerance);
  return { slope: 2 - mirrored.slope, offset: -mirrored.offset };
}

/** The soonest of n even waits comes after 1 / (n + 1) of the longest, which is twice the mean. */
const soonestS = (state: AskedState): number => (2 * state.waitS) / (state.count + 1);

/**
 * The line under the arrivals, or, where the questions say that all arrivals were late, the one above the questions.
 * @param hereS device s where they are compared
 */
export function between(
  state: AskedState,
  arrivals: ClockLine,
  tolerance: number,
  hereS: number,
): ClockLine {
  if (state.count < NEEDED) return arrivals;
  const above = lineAbove(state, arrivals.slope, tolerance);
  const asked = { slope: above.slope, offset: above.offset + soonestS(state) };
  const share = Math.max(inStep(state), apart(arrivals, asked, hereS));
  return {
    slope: arrivals.slope + share * (asked.slope - arrivals.slope),
    offset: arrivals.offset + share * (asked.offset - arrivals.offset),
  };
}
