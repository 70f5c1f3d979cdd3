import { degrees } from '../../src/math/angle.ts';
import { type Quat, aboutY, conjugate, multiply } from '../../src/math/quat.ts';
import { rootMeanSquare } from '../../src/math/stats.ts';
import { type Trial, TrialError } from './broad.ts';

export interface OrientationError {
  readonly totalDeg: number;
  readonly headingDeg: number;
  readonly inclinationDeg: number;
}

const SETTLE_S = 1;

/**
 * Root mean squares over moving rows that have a reference, by the definition of the BROAD
 * publication (Laidig et al. 2021, Data 6:72), written for a Y-up earth: error = estimate conj(reference);
 * total 2 acos|w|, heading 2 atan(y/w), inclination 2 acos sqrt(w^2 + y^2); the heading of the
 * last second before motion is taken off, since a 6-axis filter's is arbitrary.
 */
export function orientationError(trial: Trial, estimates: readonly Quat[]): OrientationError {
  const errors = trial.reference.map((r, i) => {
    const q = estimates[i];
    return r && q ? multiply(q, conjugate(r)) : null;
  });
  const start = aboutY(-startHeading(trial, errors));
  const moving = errors
    .filter((e, i): e is Quat => e !== null && trial.moving[i] === true)
    .map((e) => multiply(start, e));
  if (moving.length === 0)
    throw new TrialError(`${trial.name}: no row with moving = 1 has a reference`);
  const rms = (of: (e: Quat) => number): number => degrees(rootMeanSquare(moving.map(of)) ?? NaN);
  return {
    totalDeg: rms((e) => 2 * Math.atan2(Math.hypot(e.x, e.y, e.z), Math.abs(e.w))),
    headingDeg: rms((e) => 2 * Math.atan(e.y / e.w)),
    inclinationDeg: rms((e) => 2 * Math.atan2(Math.hypot(e.x, e.z), Math.hypot(e.w, e.y))),
  };
}

/** Mean heading of the error in the second before motion; of the first row with a reference where that second has none. */
function startHeading(trial: Trial, errors: readonly (Quat | null)[]): number {
  const first = Math.max(trial.moving.indexOf(true), 0);
  const startS = trial.samples[first]?.timeS ?? 0;
  const before = errors.filter((e, i): e is Quat => {
    const ago = startS - (trial.samples[i]?.timeS ?? 0);
    return e !== null && ago > 0 && ago <= SETTLE_S + 1e-9;
  });
  const used = before.length > 0 ? before : errors.filter((e) => e !== null).slice(0, 1);
  const headings = used.map((e) => 2 * Math.atan2(e.y, e.w));
  return Math.atan2(sum(headings.map(Math.sin)), sum(headings.map(Math.cos)));
}

const sum = (v: readonly number[]): number => v.reduce((a, b) => a + b, 0);
