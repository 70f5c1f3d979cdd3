import { percentile } from '../../math/stats.ts';
import { type Arrival, type ClockLine, onLine, pushLowerHull } from './envelope.ts';

/** A stretch of device time and the lower hull of the arrivals in it. */
export interface Bucket {
  readonly startS: number;
  readonly hull: Arrival[];
}

/** Files an arrival under its stretch, in place, and drops stretches that lie wholly outside the window. */
export function fileArrival(buckets: Bucket[], p: Arrival, bucketS: number, windowS: number): void {
  const open = buckets.at(-1);
  if (open && p.deviceS - open.startS < bucketS) pushLowerHull(open.hull, p);
  else buckets.push({ startS: p.deviceS, hull: [p] });
  while (p.deviceS - (buckets[0]?.startS ?? p.deviceS) > windowS + bucketS) buckets.shift();
}

/** The lower hull of all stretches. */
export function wholeHull(buckets: readonly Bucket[]): Arrival[] {
  const hull: Arrival[] = [];
  for (const bucket of buckets) for (const p of bucket.hull) pushLowerHull(hull, p);
  return hull;
}

/**
 * How far the fastest packet of each stretch lies above the line: 95th percentile, ms; `null` without any.
 * What is left is drift, or a beat between packet period and connection interval that hides the shortest delay.
 */
export function residualMs(buckets: readonly Bucket[], line: ClockLine): number | null {
  const fastest = buckets.map((b) =>
    b.hull.reduce((low, p) => Math.min(low, p.arrivalS - onLine(line, p.deviceS)), Infinity),
  );
  const p95 = percentile(fastest, 0.95);
  return p95 === null ? null : p95 * 1000;
}
