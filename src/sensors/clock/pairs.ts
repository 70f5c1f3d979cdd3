import { percentile } from '../../math/stats.ts';
import { type ClockLine, onLine } from './envelope.ts';

/** Thinned pairs (device s, session s) of one sensor, evenly over all that was seen. Plain data. */
export interface ClockPairs {
  device: number[];
  session: number[];
  every: number;
  seen: number;
}

const MOST_PAIRS = 4096;

export const createClockPairs = (): ClockPairs => ({ device: [], session: [], every: 1, seen: 0 });

/** Keeps a thinned record: half is dropped each time it is full. */
export function takePair(p: ClockPairs, deviceS: number, sessionS: number): void {
  if (p.seen++ % p.every !== 0) return;
  p.device.push(deviceS);
  p.session.push(sessionS);
  if (p.device.length < MOST_PAIRS) return;
  p.device = p.device.filter((_, i) => i % 2 === 0);
  p.session = p.session.filter((_, i) => i % 2 === 0);
  p.every *= 2;
}

/** 95th percentile of |session time - line|, ms; `null` without any pair. */
export function offLineMs(p: ClockPairs, line: ClockLine): number | null {
  const off = p.device.map((d, i) => Math.abs((p.session[i] ?? 0) - onLine(line, d)));
  const p95 = percentile(off, 0.95);
  return p95 === null ? null : p95 * 1000;
}
