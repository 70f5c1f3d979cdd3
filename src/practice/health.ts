import { norm } from '../math/vec3.ts';
import type { ImuSample, SensorRole } from '../sensors/sample.ts';
import type { SensorLink } from '../sensors/sources/source.ts';
import type { SensorView } from './view.ts';

/** Seconds of session time over which rate and loss are measured. */
const WINDOW_S = 5;

/** What is known of one sensor: its link and the times of its newest samples. */
export interface SensorHealth {
  link: SensorLink;
  readonly times: number[];
  lastArrivalMs: number | null;
  /** Length of the specific force at rest, smoothed, m/s^2. */
  restNorm: number | null;
}

const unknownLink = (sensor: SensorRole): SensorLink => ({
  sensor,
  state: 'searching',
  name: '',
  reason: null,
  batteryPct: null,
  rssiDbm: null,
  nominalRateHz: null,
});

export const newHealth = (sensor: SensorRole): SensorHealth => ({
  link: unknownLink(sensor),
  times: [],
  lastArrivalMs: null,
  restNorm: null,
});

/** Slower turning counts as rest, rad/s; weight of one sample in the smoothed length. */
const REST = 0.17;
const WEIGHT = 0.02;

function noteRest(health: SensorHealth, { acc, gyro }: ImuSample): void {
  const length = norm(acc);
  if (!(norm(gyro) < REST) || !Number.isFinite(length)) return;
  health.restNorm =
    health.restNorm === null ? length : health.restNorm * (1 - WEIGHT) + length * WEIGHT;
}

export function noteSamples(
  health: SensorHealth,
  batch: readonly ImuSample[],
  nowMs: number,
): void {
  for (const sample of batch) {
    health.times.push(sample.timeS);
    noteRest(health, sample);
  }
  const newest = health.times.at(-1);
  if (newest === undefined) return;
  const old = health.times.findIndex((t) => t >= newest - WINDOW_S);
  if (old > 0) health.times.splice(0, old);
  health.lastArrivalMs = nowMs;
}

/** Rows that should lie between the first and the last time, one each period. */
function missing(times: readonly number[], periodS: number): number {
  let lost = 0;
  for (let i = 1; i < times.length; i++) {
    const steps = Math.round(((times[i] ?? 0) - (times[i - 1] ?? 0)) / periodS);
    if (steps > 1) lost += steps - 1;
  }
  return lost;
}

/** Rate (Hz) and loss (0-100) over the window; `null` with under half a second of samples. */
export function measureLink(
  times: readonly number[],
  nominalRateHz: number | null,
): { rateHz: number | null; lostPct: number | null } {
  const spanS = (times.at(-1) ?? 0) - (times[0] ?? 0);
  if (!(spanS >= 0.5)) return { rateHz: null, lostPct: null };
  const rateHz = (times.length - 1) / spanS;
  const lost = missing(times, 1 / (nominalRateHz ?? rateHz));
  return { rateHz, lostPct: (100 * lost) / (lost + times.length) };
}

export function sensorView(health: SensorHealth, nowMs: number): SensorView {
  const ageMs = health.lastArrivalMs === null ? null : Math.max(0, nowMs - health.lastArrivalMs);
  const { link, restNorm } = health;
  return { ...link, ...measureLink(health.times, link.nominalRateHz), ageMs, restNorm };
}
