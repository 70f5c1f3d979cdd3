import { degrees, radians, wrapPi } from '../math/angle.ts';
import { thoraxAngles } from '../body/angles.ts';
import { type Headings, headingOf } from '../body/pose.ts';
import type { BodyFrame } from '../body/segments.ts';

/** A heading that drifts at a nearly steady rate, as a Kalman filter of two states. Plain data. */
interface Drift {
  /** What has been taken off per second, rad/s. */
  rate: number;
  /** Covariance of heading (rad) and rate (rad/s). */
  hh: number;
  hr: number;
  rr: number;
}

/**
 * Without magnetometers both headings drift, mostly by what is left of the gyro bias. At every
 * still address they are drawn back to what they were at the address reference, as far as each can
 * be trusted, and the rate of the drift is learned so that it can be taken off in between.
 */
export interface RezeroState {
  readonly turn: Drift;
  readonly arm: Drift;
  atS: number | null;
  /** Session s of the last still address. */
  lastS: number | null;
}

/** Choices of the design, from simulation: rad, rad/s, per root of a second. */
const TURN = {
  rate: radians(0.1),
  wander: radians(0.15),
  rateWander: radians(0.004),
  setup: radians(2),
};
const ARM = {
  rate: radians(0.3),
  wander: radians(0.1),
  rateWander: radians(0.004),
  setup: radians(3),
};
type Noise = typeof TURN;

/** What a gap in a movement may do to a heading, rad. */
const AFTER_GAP = radians(5);

/** How near to the reference an address must be, deg. */
const NEAR_DEG = 15;
/** A still address lasts many samples that all err alike; they count as one look a second. */
const LOOKS_PER_S = 1;

const createDrift = (n: Noise): Drift => ({ rate: 0, hh: 0, hr: 0, rr: n.rate * n.rate });

export const createRezero = (): RezeroState => ({
  turn: createDrift(TURN),
  arm: createDrift(ARM),
  atS: null,
  lastS: null,
});

/** Each frame: takes off what the headings have drifted since the one before. */
export function followDrift(
  s: RezeroState,
  { timeS, gap }: { readonly timeS: number; readonly gap: boolean },
  headings: Headings,
): void {
  const dt = s.atS === null ? 0 : Math.max(0, timeS - s.atS);
  s.atS = timeS;
  predict(s.turn, TURN, dt);
  predict(s.arm, ARM, dt);
  if (gap) {
    s.turn.hh += AFTER_GAP * AFTER_GAP;
    s.arm.hh += AFTER_GAP * AFTER_GAP;
  }
  headings.chest -= s.turn.rate * dt;
  headings.trailArm -= (s.turn.rate + s.arm.rate) * dt;
}

/** One frame of a still address: moves `headings` a little toward the reference. */
export function rezero(
  s: RezeroState,
  frame: BodyFrame,
  headings: Headings,
  armAtAddress: number,
): void {
  const turn = wrapPi(thoraxAngles(frame.thorax).turn);
  const arm = wrapPi(headingOf(frame.humerus) - turn - armAtAddress);
  if (Math.abs(degrees(turn)) > NEAR_DEG || Math.abs(degrees(arm)) > NEAR_DEG) return;
  const since = s.lastS === null ? 0 : frame.timeS - s.lastS;
  s.lastS = frame.timeS;
  const look = Math.min(since, 0.1) * LOOKS_PER_S;
  if (!(look > 0)) return;
  const turnBy = correct(s.turn, TURN, turn, look);
  headings.chest -= turnBy;
  headings.trailArm -= turnBy + correct(s.arm, ARM, arm, look);
}

function predict(d: Drift, n: Noise, dt: number): void {
  d.hh += dt * (2 * d.hr + dt * d.rr) + n.wander * n.wander * dt;
  d.hr += dt * d.rr;
  d.rr += n.rateWander * n.rateWander * dt;
}

/** Takes a look at the error of a heading, rad; returns how much of it is believed. */
function correct(d: Drift, n: Noise, error: number, look: number): number {
  const total = d.hh + (n.setup * n.setup) / look;
  const [kh, kr] = [d.hh / total, d.hr / total];
  d.rate += kr * error;
  d.rr -= kr * d.hr;
  d.hr -= kh * d.hr;
  d.hh -= kh * d.hh;
  return kh * error;
}
