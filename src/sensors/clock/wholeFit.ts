import {
  type Answer,
  type AskedState,
  between,
  createAsked,
  takeAnswer,
  takeWait,
  uncertainMs,
} from './asked.ts';
import { type Bucket, fileArrival, residualMs, wholeHull } from './buckets.ts';
import { type DeviceClock, TRAITS } from './clock.ts';
import { type Arrival, type ClockLine, lineUnder, lowerEnvelope, onLine } from './envelope.ts';

/** What a fit over one unbroken run of a device clock needs of all that came; plain data of bounded growth. */
export interface WholeFitState {
  readonly kind: DeviceClock;
  readonly buckets: Bucket[];
  readonly asked: AskedState;
  /** The latest of both: whether packets are in step shows in them. */
  recent: Arrival[];
  recentAnswers: Answer[];
}

export interface WholeFit extends ClockLine {
  /** How far the line may be off, as `clockResidualMs` of the live clock, ms. */
  readonly residualMs: number;
}

const BUCKET_S = 10;
const RECENT = 2048;

export const createWholeFit = (kind: DeviceClock): WholeFitState => ({
  kind,
  buckets: [],
  asked: createAsked(),
  recent: [],
  recentAnswers: [],
});

const latest = <T>(all: T[], one: T): T[] =>
  all.push(one) > 2 * RECENT ? all.slice(-RECENT) : all;

/** The next packet's arrival, in order of device time. Earlier samples of it may be given too: they only lie higher. */
export function takeArrival(state: WholeFitState, p: Arrival): void {
  fileArrival(state.buckets, p, BUCKET_S, Infinity);
  state.recent = latest(state.recent, p);
}

/** The device's next answer to "what time is it?". */
export function takeQuestion(state: WholeFitState, answer: Answer): void {
  takeAnswer(state.asked, answer.deviceS, answer.sentS, null, Infinity);
  state.recentAnswers = latest(state.recentAnswers, answer);
}

/** The final fit: host time = slope x device time + offset, over all that was taken; `null` before the first packet. */
export function wholeFit(state: WholeFitState): WholeFit | null {
  const hull = wholeHull(state.buckets);
  const [first, last] = [hull[0], hull.at(-1)];
  if (!first || !last) return null;
  const { slopeTolerance, fitFromS } = TRAITS[state.kind];
  const arrivals =
    last.deviceS - first.deviceS < fitFromS
      ? lineUnder(hull, 1)
      : lowerEnvelope(hull, slopeTolerance);
  const asked = waiting(state, arrivals);
  const line = between(asked, arrivals, slopeTolerance, (first.deviceS + last.deviceS) / 2);
  return { ...line, residualMs: uncertainMs(asked, residualMs(state.buckets, arrivals) ?? 0) };
}

/** All questions, with the waits of the latest packets and questions. */
function waiting(state: WholeFitState, arrivals: ClockLine): AskedState {
  const asked = createAsked();
  for (const { deviceS, sentS } of state.recentAnswers)
    takeAnswer(asked, deviceS, sentS, arrivals, Infinity);
  for (const p of state.recent) takeWait(asked, p.arrivalS - onLine(arrivals, p.deviceS));
  const { buckets, count } = state.asked;
  return { ...asked, buckets, count };
}
