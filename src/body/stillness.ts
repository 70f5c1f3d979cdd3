import { degrees } from '../math/angle.ts';
import {
  type Vec3,
  ZERO,
  add,
  cross,
  dot,
  norm,
  normalise,
  scale,
  subtract,
} from '../math/vec3.ts';
import type { Orientation } from '../orientation/orientation.ts';

export interface Stand {
  /** Unit vector up, sensor frame. */
  readonly up: Vec3;
  /** Mean norm of the specific force, m/s^2. */
  readonly norm: number;
  /** RMS angular rate, deg/s. */
  readonly rateDegPerS: number;
}

/** Mean accelerometer direction of a still window; `null` for an empty one or one without gravity. */
export function standOf(samples: readonly Orientation[]): Stand | null {
  if (samples.length === 0) return null;
  const mean = scale(
    samples.reduce((s, o) => add(s, o.acc), ZERO),
    1 / samples.length,
  );
  const up = normalise(mean);
  if (up === null) return null;
  const square = samples.reduce((s, o) => s + dot(o.gyro, o.gyro), 0) / samples.length;
  return { up, norm: norm(mean), rateDegPerS: degrees(Math.sqrt(square)) };
}

/**
 * Do gyro and accelerometer tell of the same turn? While a segment turns slowly, the vertical seen
 * from the sensor moves as du/dt = -w x u. Correlation of the two sides, -1..1; 0 without movement.
 */
export function gyroAgreement(samples: readonly Orientation[]): number {
  let [both, seen, told] = [0, 0, 0];
  for (let i = LAG; i + LAG < samples.length; i++) {
    const pair = turnSeenAndTold(samples[i - LAG], samples[i], samples[i + LAG]);
    if (pair === null) continue;
    both += dot(pair.seen, pair.told);
    seen += dot(pair.seen, pair.seen);
    told += dot(pair.told, pair.told);
  }
  const size = Math.sqrt(seen * told);
  return size > 0 ? both / size : 0;
}

/** Samples on either side of a difference: about 0.2 s at 100 Hz, over which a slow turn dwarfs noise. */
const LAG = 10;

function turnSeenAndTold(
  before: Orientation | undefined,
  here: Orientation | undefined,
  after: Orientation | undefined,
): { seen: Vec3; told: Vec3 } | null {
  if (!before || !here || !after) return null;
  const dt = after.timeS - before.timeS;
  const [a, u, b] = [normalise(before.acc), normalise(here.acc), normalise(after.acc)];
  if (!(dt > 0) || a === null || u === null || b === null) return null;
  return { seen: scale(subtract(b, a), 1 / dt), told: cross(u, here.gyro) };
}
