import { STANDARD_GRAVITY } from '../math/gravity.ts';
import type { SensorRole } from '../sensors/sample.ts';
import type { SensorView } from './view.ts';

/** What stands between a sensor and a practice. */
export interface SensorProblem {
  readonly sensor: SensorRole;
  readonly code: 'not-streaming' | 'stale' | 'slow' | 'lossy' | 'norm' | 'no-rest';
}

/** Limits of the check before a practice; choices of the design. */
const STALE_MS = 1500;
const RATE_SHARE = 0.9;
const LOST_PCT = 5;
/** How far from gravity a sensor at rest may read. */
const NORM_SHARE = 0.05;

const slow = ({ rateHz, nominalRateHz }: SensorView): boolean =>
  rateHz !== null && nominalRateHz !== null && rateHz < RATE_SHARE * nominalRateHz;

function problemOf(view: SensorView): SensorProblem['code'] | null {
  if (view.state !== 'streaming' || view.rateHz === null) return 'not-streaming';
  if (view.ageMs === null || view.ageMs > STALE_MS) return 'stale';
  if (slow(view)) return 'slow';
  if ((view.lostPct ?? 0) > LOST_PCT) return 'lossy';
  if (view.restNorm === null) return 'no-rest';
  return Math.abs(view.restNorm / STANDARD_GRAVITY - 1) > NORM_SHARE ? 'norm' : null;
}

const NEEDED = ['chest', 'trailArm'] as const;

/** What is wrong with the sensors a practice needs; empty where nothing is. */
export const sensorProblems = (sensors: readonly SensorView[]): readonly SensorProblem[] =>
  NEEDED.flatMap((sensor) => {
    const view = sensors.find((s) => s.sensor === sensor);
    const code = view === undefined ? 'not-streaming' : problemOf(view);
    return code === null ? [] : [{ sensor, code }];
  });
