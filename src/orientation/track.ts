import { rotationBetween } from '../math/integrate.ts';
import { type Vec3, lerp, scale, subtract } from '../math/vec3.ts';
import type { ImuSample } from '../sensors/sample.ts';
import { type DefaultFilterState, defaultFilter } from './defaultFilter.ts';
import type { Orientation, Reading } from './orientation.ts';
import { type PeriodState, createPeriod, measuredRate, spansOf, stepPeriod } from './period.ts';
import { isReading } from './reading.ts';

/** One sensor's way from samples to orientations. Plain data: JSON and back gives the same run. */
export interface TrackState {
  readonly filter: DefaultFilterState;
  readonly period: PeriodState;
  /** The last sample taken. */
  last: ImuSample | null;
  /** Came after a long silence; taken when the next one confirms its time. */
  waiting: ImuSample | null;
  samples: number;
  lost: number;
  saturated: number;
  readonly dropped: { duplicate: number; backward: number; notFinite: number };
  readonly gaps: Gap[];
}

/** A loss too long to interpolate, from the last sample before to the first after, session s. */
interface Gap {
  readonly fromS: number;
  readonly toS: number;
}

type Emit = (orientation: Orientation) => void;

/** Losses up to this many samples are interpolated. */
const INTERPOLATED_AT_MOST = 4;
/** Over a gap up to this long the mean of the rates at its ends still says where the sensor went, s. */
export const BRIDGED_S = 0.25;

export const createTrack = (): TrackState => ({
  filter: defaultFilter.create(),
  period: createPeriod(),
  last: null,
  waiting: null,
  samples: 0,
  lost: 0,
  saturated: 0,
  dropped: { duplicate: 0, backward: 0, notFinite: 0 },
  gaps: [],
});

/**
 * Takes one sample into `state` (in place) and emits its orientation, after those of lost samples
 * before it. Only `sample.timeS` counts as time. Samples that are not finite, come twice or go
 * backward are dropped and counted. The first sample after a gap is emitted together with the
 * next: a single wild time stamp must not carry the whole track away.
 */
export function stepTrack(state: TrackState, sample: ImuSample, emit: Emit): void {
  const { dropped, last } = state;
  if (!Number.isFinite(sample.timeS) || !isReading(sample)) dropped.notFinite += 1;
  else if (last === null) begin(state, sample, emit);
  else if (sample.timeS === (state.waiting ?? last).timeS) dropped.duplicate += 1;
  else if (sample.timeS <= last.timeS) dropped.backward += 1;
  else follow(state, decideWaiting(state, last, sample, emit), sample, emit);
}

/** The sample after a gap is believed when the next is later still. Returns the last sample taken. */
function decideWaiting(state: TrackState, last: ImuSample, next: ImuSample, emit: Emit): ImuSample {
  const { waiting } = state;
  if (waiting === null) return last;
  state.waiting = null;
  if (next.timeS > waiting.timeS) {
    crossGap(state, last, waiting, emit);
    return waiting;
  }
  state.dropped.backward += 1;
  return last;
}

function begin(state: TrackState, sample: ImuSample, emit: Emit): void {
  defaultFilter.update(state.filter, sample, 0);
  take(state, sample, false, emit);
}

function follow(state: TrackState, last: ImuSample, sample: ImuSample, emit: Emit): void {
  const dtS = sample.timeS - last.timeS;
  if (spansOf(state.period, dtS) - 1 > INTERPOLATED_AT_MOST) {
    state.waiting = sample;
    return;
  }
  const spans = stepPeriod(state.period, dtS);
  state.lost += spans - 1;
  for (let i = 1; i < spans; i++) emit(interpolate(state, last, sample, i, spans));
  advance(state, lerp(last.gyro, sample.gyro, 1 - 1 / spans), sample, dtS / spans);
  take(state, sample, false, emit);
}

/** Turns the filter on with the mean rate between two readings. */
function advance(state: TrackState, from: Vec3, to: Reading, dtS: number): void {
  const gyro = scale(rotationBetween(from, to.gyro, dtS), 1 / dtS);
  defaultFilter.update(state.filter, { acc: to.acc, gyro }, dtS);
}

/** Lost sample number `i` of the `spans` steps between two taken ones. */
function interpolate(
  state: TrackState,
  a: ImuSample,
  b: ImuSample,
  i: number,
  spans: number,
): Orientation {
  const t = i / spans;
  const reading = { acc: lerp(a.acc, b.acc, t), gyro: lerp(a.gyro, b.gyro, t) };
  const dtS = (b.timeS - a.timeS) / spans;
  advance(state, lerp(a.gyro, b.gyro, (i - 1) / spans), reading, dtS);
  return orientationOf(state, a.timeS + i * dtS, reading, {
    interpolated: true,
    afterGap: false,
    saturated: a.saturated || b.saturated,
  });
}

function crossGap(state: TrackState, last: ImuSample, next: ImuSample, emit: Emit): void {
  const gapS = next.timeS - last.timeS;
  const { periodS } = state.period;
  state.gaps.push({ fromS: last.timeS, toS: next.timeS });
  state.lost += stepPeriod(state.period, gapS) - 1;
  // Where nobody knows how far it turned, what was felt before says nothing about now.
  defaultFilter.afterGap(state.filter, gapS <= BRIDGED_S ? gapS : Infinity);
  if (gapS <= BRIDGED_S) advance(state, last.gyro, next, gapS);
  else
    defaultFilter.update(state.filter, { acc: next.acc, gyro: state.filter.bias.value }, periodS);
  take(state, next, true, emit);
}

function take(state: TrackState, sample: ImuSample, afterGap: boolean, emit: Emit): void {
  state.last = sample;
  state.samples += 1;
  if (sample.saturated) state.saturated += 1;
  const { saturated } = sample;
  emit(orientationOf(state, sample.timeS, sample, { interpolated: false, afterGap, saturated }));
}

type Marks = Pick<Orientation, 'interpolated' | 'afterGap' | 'saturated'>;

const orientationOf = (
  { filter }: TrackState,
  timeS: number,
  { acc, gyro }: Reading,
  { interpolated, afterGap, saturated }: Marks,
): Orientation => ({
  timeS,
  q: filter.q,
  gyro: subtract(gyro, filter.bias.value),
  acc,
  rest: filter.rest,
  interpolated,
  afterGap,
  saturated,
});

export interface TrackQuality {
  readonly samples: number;
  readonly lost: number;
  /** 0-100 of all that the sensor should have sent. */
  readonly lostPct: number;
  readonly saturated: number;
  /** From the sensor's own times, losses left out, Hz; `null` before the second sample. */
  readonly rateHz: number | null;
  readonly gaps: readonly Gap[];
}

export function trackQuality({ samples, lost, saturated, period, gaps }: TrackState): TrackQuality {
  const lostPct = samples === 0 ? 0 : (100 * lost) / (samples + lost);
  return { samples, lost, lostPct, saturated, rateHz: measuredRate(period), gaps };
}
