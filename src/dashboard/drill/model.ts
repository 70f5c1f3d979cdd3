import { clamp } from '../../math/angle.ts';
import type { PoseView } from '../../streaming/contract.ts';
import type { Hands } from '../body/figure.ts';
import { flightOf, handsDuring } from '../body/flight.ts';
import { type Angles, DRILL_ANGLES, poseOf } from '../body/poses.ts';

/** The moments of a rehearsal, s from the start of the loop. */
export interface Moments {
  readonly startS: number;
  readonly topS: number;
  readonly releaseS: number;
  /** `null`: not seen. */
  readonly catchS: number | null;
}

/** A rehearsal of our own, drawn and not measured; it meets every target of the standard plan. */
export const DRILL = {
  startS: 0.7,
  topS: 1.7,
  releaseS: 3.1,
  catchS: 3.52,
  endS: 4.9,
} as const;

/** The chest starts first, the arm so much later, s; each comes to rest after so long. */
const CHEST_S = 0.46;
const ARM_LATER_S = 0.06;
const ARM_S = 0.42;

/** Share done of a movement from rest to rest with the least jerk (Flash and Hogan 1985). */
function done(timeS: number, fromS: number, lastsS: number): number {
  const t = clamp((timeS - fromS) / lastsS, 0, 1);
  return t * t * t * (10 - 15 * t + 6 * t * t);
}

type All = Required<Angles>;

const between = (a: All, b: All, chest: number, arm: number): All => {
  const of = (key: keyof All, k: number): number => a[key] + (b[key] - a[key]) * k;
  return {
    turn: of('turn', chest),
    lateral: of('lateral', chest),
    flexion: of('flexion', chest),
    plane: of('plane', arm),
    elevation: of('elevation', arm),
    rotation: of('rotation', arm),
  };
};

/** The body of the drill at `timeS` of its loop. */
export function drillPose(timeS: number): PoseView {
  const { address, top, caught } = DRILL_ANGLES;
  if (timeS < DRILL.releaseS) {
    const back = done(timeS, DRILL.startS, DRILL.topS - DRILL.startS);
    return poseOf(between(address, top, back, back));
  }
  const chest = done(timeS, DRILL.releaseS, CHEST_S);
  const arm = done(timeS, DRILL.releaseS + ARM_LATER_S, ARM_S);
  return poseOf(between(top, caught, chest, arm));
}

const FLIGHT = flightOf(drillPose, DRILL.releaseS, DRILL.catchS);

/** What its hands do then. */
export const drillHands = (timeS: number): Hands => handsDuring(FLIGHT, timeS);

export interface Still {
  readonly pose: PoseView;
  readonly hands: Hands;
}

export const drillAt = (timeS: number): Still => ({
  pose: drillPose(timeS),
  hands: drillHands(timeS),
});

export const STEPS = ['address', 'hold', 'release', 'catch'] as const;
export type Step = (typeof STEPS)[number];

/** The moment that shows a step best, s: while the club falls for the release. */
export const STEP_AT: Readonly<Record<Step, number>> = {
  address: 0,
  hold: (DRILL.topS + DRILL.releaseS) / 2,
  release: DRILL.releaseS + 0.24,
  catch: DRILL.catchS + 0.12,
};

/** Which step is under way; on the way to the top it is the hold that comes. */
export function stepAt(timeS: number): Step {
  if (timeS < DRILL.startS) return 'address';
  if (timeS < DRILL.releaseS) return 'hold';
  return timeS < DRILL.catchS ? 'release' : 'catch';
}

/** Times as slow as it is, so that the eye can follow: from just before the release to just after the catch. */
export const SLOW = { times: 4, fromS: DRILL.releaseS - 0.05, toS: DRILL.catchS + 0.05 };
