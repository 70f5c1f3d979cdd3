import {
  type AskedState,
  between,
  createAsked,
  takeAnswer,
  takeWait,
  uncertainMs,
} from './asked.ts';
import { type Bucket, fileArrival, residualMs, wholeHull } from './buckets.ts';
import type { DeviceClock } from './clock.ts';
import { type Arrival, type ClockLine, lineUnder, lowerEnvelope, onLine } from './envelope.ts';

/** A device's answer to a question for its time. */
export interface Answer {
  readonly deviceS: number;
  readonly sentS: number;
}

export interface WholeFit extends ClockLine {
  /** How far the line may be off, as `clockResidualMs` of the live clock, ms. */
  readonly residualMs: number;
}

const BUCKET_S = 10;
const SLOPE_TOLERANCE: Record<DeviceClock, number> = { stamped: 0.002, counted: 0.03 };
/** A shorter recording tells less about the rate than the device's nominal one does, s. */
const FIT_FROM_S: Record<DeviceClock, number> = { stamped: 20, counted: 5 };

/**
 * The final fit over one unbroken run of a device clock: host time = slope x device time + offset.
 * @param pairs in order of device time, at least one; a packet's earlier samples may be given too (they only lie higher)
 * @param answers when a question left (host s) and what the device's clock said to it (device s), where it was asked
 */
export function fitWhole(
  pairs: readonly Arrival[],
  kind: DeviceClock = 'stamped',
  answers: readonly Answer[] = [],
): WholeFit {
  const buckets: Bucket[] = [];
  for (const p of pairs) fileArrival(buckets, p, BUCKET_S, Infinity);
  const hull = wholeHull(buckets);
  const spanS = (hull.at(-1)?.deviceS ?? 0) - (hull[0]?.deviceS ?? 0);
  if (hull.length === 0) throw new RangeError('fitWhole needs at least one pair');
  const arrivals =
    spanS < FIT_FROM_S[kind] ? lineUnder(hull, 1) : lowerEnvelope(hull, SLOPE_TOLERANCE[kind]);
  const asked = questioned(pairs, answers, arrivals);
  const middleS = ((hull[0]?.deviceS ?? 0) + (hull.at(-1)?.deviceS ?? 0)) / 2;
  const line = between(asked, arrivals, SLOPE_TOLERANCE[kind], middleS);
  return { ...line, residualMs: uncertainMs(asked, residualMs(buckets, arrivals) ?? 0) };
}

function questioned(
  pairs: readonly Arrival[],
  answers: readonly Answer[],
  arrivals: ClockLine,
): AskedState {
  const asked = createAsked();
  for (const { deviceS, sentS } of answers) takeAnswer(asked, deviceS, sentS, arrivals, Infinity);
  for (const p of pairs) takeWait(asked, p.arrivalS - onLine(arrivals, p.deviceS));
  return asked;
}

/** Cuts a recording's pairs where the device clock began anew (device time falls, or leaps over 1 s past the host's). */
export function unbrokenRuns(pairs: readonly Arrival[]): Arrival[][] {
  const runs: Arrival[][] = [];
  let previous: Arrival | null = null;
  for (const p of pairs) {
    const deviceStep = previous ? p.deviceS - previous.deviceS : 0;
    const hostStep = previous ? p.arrivalS - previous.arrivalS : 0;
    const broken = previous === null || deviceStep < 0 || deviceStep > hostStep + 1;
    if (broken) runs.push([]);
    runs.at(-1)?.push(p);
    previous = p;
  }
  return runs;
}
