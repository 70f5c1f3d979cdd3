import { degrees, radians, wrapPi } from '../math/angle.ts';
import { thoraxAngles } from '../body/angles.ts';
import { type Headings, headingOf } from '../body/pose.ts';
import type { BodyFrame } from '../body/segments.ts';

/**
 * Without magnetometers both headings drift. At every still address they are drawn back to what
 * they were at the address reference, as far as each can be trusted: a scalar Kalman filter each.
 */
export interface RezeroState {
  /** Variance of the turn's zero and of the arm's heading against the chest, rad^2. */
  turnVariance: number;
  armVariance: number;
  atS: number | null;
  /** Session s of the last still address. */
  lastS: number | null;
}

/** Drift of a heading, rad^2 per s; how differently one person sets up, rad; how near an address must be, deg. Choices. */
const DRIFT = radians(0.25) ** 2;
const SETUP = { turn: radians(2.5), arm: radians(3) };
const NEAR_DEG = 12;
/** A still address lasts many samples that all err alike; they count as one look a second. */
const LOOKS_PER_S = 1;

export const createRezero = (): RezeroState => ({
  turnVariance: 0,
  armVariance: 0,
  atS: null,
  lastS: null,
});

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
  const since = s.atS === null ? 0 : frame.timeS - s.atS;
  s.atS = frame.timeS;
  s.lastS = frame.timeS;
  s.turnVariance += DRIFT * since;
  s.armVariance += DRIFT * since;
  const look = Math.min(since, 0.1) * LOOKS_PER_S;
  const turnGain = gain(s.turnVariance, SETUP.turn, look);
  const armGain = gain(s.armVariance, SETUP.arm, look);
  s.turnVariance *= 1 - turnGain;
  s.armVariance *= 1 - armGain;
  headings.chest -= turnGain * turn;
  headings.trailArm -= turnGain * turn + armGain * arm;
}

const gain = (variance: number, sigma: number, look: number): number =>
  look > 0 ? variance / (variance + (sigma * sigma) / look) : 0;
