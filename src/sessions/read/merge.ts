import { STANDARD_GRAVITY } from '../../math/gravity.ts';
import type { AnalysisInput } from '../../analysis/contract.ts';
import { vec3 } from '../../math/vec3.ts';
import type { ImuSample, SensorRole } from '../../sensors/sample.ts';
import type { SessionEvent } from '../../sensors/sessionEvent.ts';
import { eventEndS } from '../../sensors/recorded.ts';
import type { TrackHeader } from '../header.ts';
import { SLOT_COUNT } from './channels.ts';
import type { MotionBlock } from './motionBlocks.ts';

/** Inputs handed over at once. */
const BATCH = 1024;
/** A count within 0.1 % of the end of the int16 range is taken for the end. */
const END_OF_RANGE = 0.999;

export interface TrackStream {
  readonly role: SensorRole;
  readonly header: TrackHeader;
  readonly blocks: AsyncGenerator<MotionBlock>;
}

interface Track {
  readonly role: SensorRole;
  readonly accLimit: number;
  readonly gyroLimit: number;
  readonly blocks: AsyncGenerator<MotionBlock>;
  values: Float64Array;
  row: number;
  rows: number;
  /** Time of the row that is next, s; Infinity at the end. */
  nextS: number;
}

/** End of the range in SI above which a reading counts as saturated. */
const saturationLimits = (header: TrackHeader) => ({
  accLimit: header.accFullScaleG * STANDARD_GRAVITY * END_OF_RANGE,
  gyroLimit: ((header.gyroFullScaleDegPerS * Math.PI) / 180) * END_OF_RANGE,
});

/** Samples of all tracks and the events in order of time; an event stands where it is over. */
export async function* mergeTracks(
  streams: readonly TrackStream[],
  events: readonly SessionEvent[],
): AsyncGenerator<readonly AnalysisInput[]> {
  const tracks = streams.map(({ role, header, blocks }): Track => ({
    role,
    ...saturationLimits(header),
    blocks,
    values: new Float64Array(0),
    row: 0,
    rows: 0,
    nextS: -Infinity,
  }));
  const ends = events.map(eventEndS);
  const queue = { events, ends, at: 0 };
  try {
    for (const track of tracks) await nextBlock(track);
    for (;;) {
      const batch: AnalysisInput[] = [];
      const empty = fill(batch, tracks, queue);
      if (batch.length > 0) yield batch;
      if (empty !== null) await nextBlock(empty);
      else if (batch.length === 0) return;
    }
  } finally {
    for (const track of tracks) await track.blocks.return(undefined);
  }
}

interface EventQueue {
  readonly events: readonly SessionEvent[];
  readonly ends: readonly number[];
  at: number;
}

async function nextBlock(track: Track): Promise<void> {
  const { value, done } = await track.blocks.next();
  track.row = 0;
  track.rows = done ? 0 : value.rows;
  track.values = done ? track.values : value.values;
  track.nextS = done ? Infinity : (track.values[0] as number);
}

/** Fills the batch; returns the track whose block ran out, or `null` where the batch is full or all is done. */
function fill(batch: AnalysisInput[], tracks: readonly Track[], queue: EventQueue): Track | null {
  while (batch.length < BATCH) {
    let first = tracks[0] as Track;
    for (let k = 1; k < tracks.length; k++) {
      const track = tracks[k] as Track;
      if (track.nextS < first.nextS) first = track;
    }
    const endS = queue.ends[queue.at];
    if (endS !== undefined && endS <= first.nextS) {
      batch.push({ kind: 'event', event: queue.events[queue.at++] as SessionEvent });
      continue;
    }
    if (first.nextS === Infinity) return null;
    batch.push({ kind: 'sample', sample: sampleOf(first) });
    first.row++;
    if (first.row === first.rows) return first;
    first.nextS = first.values[first.row * SLOT_COUNT] as number;
  }
  return null;
}

function sampleOf(track: Track): ImuSample {
  const { values, accLimit, gyroLimit } = track;
  const base = track.row * SLOT_COUNT;
  const ax = values[base + 1] as number;
  const ay = values[base + 2] as number;
  const az = values[base + 3] as number;
  const gx = values[base + 4] as number;
  const gy = values[base + 5] as number;
  const gz = values[base + 6] as number;
  return {
    sensor: track.role,
    timeS: values[base] as number,
    acc: vec3(ax, ay, az),
    gyro: vec3(gx, gy, gz),
    deviceTimeS: orNull(values[base + 7] as number),
    arrivalTimeS: orNull(values[base + 8] as number),
    saturated:
      beyond(ax, accLimit) ||
      beyond(ay, accLimit) ||
      beyond(az, accLimit) ||
      beyond(gx, gyroLimit) ||
      beyond(gy, gyroLimit) ||
      beyond(gz, gyroLimit),
  };
}

const beyond = (value: number, limit: number): boolean => value > limit || value < -limit;
/** A cell of `MotionBlock`: NaN and infinities compare unequal to themselves minus themselves. */
export const orNull = (value: number): number | null => (value - value === 0 ? value : null);
