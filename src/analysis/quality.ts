import { percentile } from '../math/stats.ts';
import type { ImuSample } from '../sensors/sample.ts';
import { type TrackState, trackQuality } from '../orientation/track.ts';
import type { SensorQuality } from './result.ts';

/** Thinned pairs (device, session) of one sensor, for the spread about their line. Plain data. */
export interface ClockPairs {
  device: number[];
  session: number[];
  every: number;
  seen: number;
}

const MOST_PAIRS = 4096;

export const createClockPairs = (): ClockPairs => ({ device: [], session: [], every: 1, seen: 0 });

/** Keeps a thinned record: half is dropped each time it is full. */
export function observeClock(p: ClockPairs, sample: ImuSample): void {
  if (sample.deviceTimeS === null || p.seen++ % p.every !== 0) return;
  p.device.push(sample.deviceTimeS);
  p.session.push(sample.timeS);
  if (p.device.length < MOST_PAIRS) return;
  p.device = p.device.filter((_, i) => i % 2 === 0);
  p.session = p.session.filter((_, i) => i % 2 === 0);
  p.every *= 2;
}

/** 95th percentile of |session time - straight line through device time|, ms; `null` for too few. */
export function clockResidualMs(p: ClockPairs): number | null {
  const n = p.device.length;
  if (n < 10) return null;
  const md = p.device.reduce((a, b) => a + b, 0) / n;
  const ms = p.session.reduce((a, b) => a + b, 0) / n;
  let [dd, ds] = [0, 0];
  p.device.forEach((d, i) => {
    dd += (d - md) ** 2;
    ds += (d - md) * ((p.session[i] ?? 0) - ms);
  });
  if (!(dd > 0)) return null;
  const slope = ds / dd;
  const off = p.device.map((d, i) => Math.abs((p.session[i] ?? 0) - ms - slope * (d - md)));
  return (percentile(off, 0.95) ?? 0) * 1000;
}

export function sensorQuality(track: TrackState, clock: ClockPairs): SensorQuality {
  const { rateHz, lostPct, gaps, saturated } = trackQuality(track);
  return { rateHz, lostPct, gaps, saturated, clockResidualMs: clockResidualMs(clock) };
}
