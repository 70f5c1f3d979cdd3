import { type ClockPairs, createClockPairs, offLineMs, takePair } from '../sensors/clock/pairs.ts';
import type { ImuSample } from '../sensors/sample.ts';
import { type TrackState, trackQuality } from '../orientation/track.ts';
import type { SensorQuality } from './result.ts';

/** How straight one sensor's session time runs along its device clock, since the device began anew. Plain data. */
export interface ClockSpread {
  pairs: ClockPairs;
  last: { readonly deviceS: number; readonly sessionS: number } | null;
  /** Of the runs before, ms. */
  worstMs: number | null;
}

export const createClockSpread = (): ClockSpread => ({
  pairs: createClockPairs(),
  last: null,
  worstMs: null,
});

/** The two clocks are this far apart from one sample to the next, s: the device's began anew, or stood still. */
const ANEW_S = 1;

/** One reading's clocks. */
export function observeClock(spread: ClockSpread, sample: ImuSample): void {
  const { deviceTimeS: deviceS, timeS: sessionS } = sample;
  if (deviceS === null) return;
  const { last } = spread;
  const apartS = last ? deviceS - last.deviceS - (sessionS - last.sessionS) : 0;
  if (Math.abs(apartS) > ANEW_S) {
    spread.worstMs = worse(spread.worstMs, spreadMs(spread.pairs));
    spread.pairs = createClockPairs();
  }
  takePair(spread.pairs, deviceS, sessionS);
  spread.last = { deviceS, sessionS };
}

const worse = (a: number | null, b: number | null): number | null =>
  a === null || b === null ? (a ?? b) : Math.max(a, b);

/** 95th percentile of |session time - straight line through device time|, ms; `null` for too few. */
function spreadMs(p: ClockPairs): number | null {
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
  return offLineMs(p, { slope, offset: ms - slope * md });
}

/** Of the worst run, ms; `null` where no sample had a device time. */
export const clockResidualMs = ({ worstMs, pairs }: ClockSpread): number | null =>
  worse(worstMs, spreadMs(pairs));

export function sensorQuality(track: TrackState, clock: ClockSpread): SensorQuality {
  const { rateHz, lostPct, gaps, saturated } = trackQuality(track);
  return { rateHz, lostPct, gaps, saturated, clockResidualMs: clockResidualMs(clock) };
}
