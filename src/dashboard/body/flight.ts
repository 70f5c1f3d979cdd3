import { clamp } from '../../math/angle.ts';
import { STANDARD_GRAVITY } from '../../math/gravity.ts';
import { rotateInverse } from '../../math/quat.ts';
import { type Vec3, ZERO, add, dot, norm, scale, subtract, vec3 } from '../../math/vec3.ts';
import { FOREARM, forearmAt, smooth } from './arms.ts';
import { BUILD } from './build.ts';
import { type Hands, skeletonOf } from './figure.ts';
import type { Club, Segments } from './skeleton.ts';

/** How the club left the hands and how the trail hand got it again; times on one clock. Plain data. */
export interface Flight {
  readonly releaseS: number;
  /** The hands are open: it falls from here. */
  readonly leaveS: number;
  readonly catchS: number | null;
  readonly from: Club;
  /** m/s */
  readonly velocity: Vec3;
  /** Trail elbow at the catch, rad. */
  readonly bend: number;
  /** From the hand at the catch, humerus axes; `null` without one. */
  readonly inHand: Club | null;
}

export type PoseAt = (timeS: number) => Segments | null;

/** From the start of the chest until the hands are open, s. A choice: no sensor sees the hands. */
const OPENING_S = 0.06;
/** Span over which the club's speed in the hands is taken, s, and the most of it, m/s. */
const SPEED = { spanS: 0.02, most: 1.5 };
/** Places along the shaft where the hand may close, m from the middle of the grip. */
const CATCHABLE = { from: -0.06, to: 0.3 };
/** Bends of the trail elbow that are tried for the catch, rad; near `usual` is preferred. */
const BENDS = { from: 0.6, to: 1.9, step: 0.05, usual: 1.3 };

const clubIn = (s: Segments | null): Club | null => s && skeletonOf(s, { do: 'hold' }).club;

/** Free fall from `from`, m. */
export const fallen = (from: Vec3, velocity: Vec3, s: number): Vec3 =>
  add(add(from, scale(velocity, s)), vec3(0, (-STANDARD_GRAVITY * s * s) / 2, 0));

/** With what bend of the elbow, and where on the shaft, the hand comes nearest to the falling club. */
function meetClub(s: Segments, dropped: Vec3, along: Vec3) {
  const { trailArm } = skeletonOf(s, { do: 'hang' });
  let best = { bend: BENDS.usual, at: 0, off: ZERO, cost: Infinity };
  for (let bend = BENDS.from; bend <= BENDS.to; bend += BENDS.step) {
    const fist = add(trailArm.elbow, scale(forearmAt(s, bend), FOREARM));
    const way = subtract(fist, dropped);
    const at = clamp(dot(way, along), CATCHABLE.from, CATCHABLE.to);
    const off = subtract(way, scale(along, at));
    const cost = norm(off) + 2 * Math.abs(off.y) + 0.1 * Math.abs(bend - BENDS.usual);
    if (cost < best.cost) best = { bend, at, off, cost };
  }
  return best;
}

function speedOf(club: Club, before: Club | null): Vec3 {
  if (before === null) return ZERO;
  const v = scale(subtract(club.grip, before.grip), 1 / SPEED.spanS);
  return scale(v, Math.min(1, SPEED.most / Math.max(1e-9, norm(v))));
}

/**
 * From the release to the catch under gravity alone. Where it is caught, it leaves the hands with the speed
 * that brings it into the catching one; else with the speed of the hands.
 * @returns `null` where the body at the release is not known
 */
export function flightOf(poseAt: PoseAt, releaseS: number, catchS: number | null): Flight | null {
  const leaveS = Math.min(releaseS + OPENING_S, catchS ?? Infinity);
  const from = clubIn(poseAt(leaveS) ?? poseAt(releaseS));
  if (from === null) return null;
  const velocity = speedOf(from, clubIn(poseAt(leaveS - SPEED.spanS)));
  const flight = { releaseS, leaveS, from, bend: BENDS.usual };
  const body = catchS === null ? null : poseAt(catchS);
  if (body === null || catchS === null || catchS <= leaveS)
    return { ...flight, catchS: null, velocity, inHand: null };
  const fallS = catchS - leaveS;
  const { bend, at, off } = meetClub(body, fallen(from.grip, ZERO, fallS), from.along);
  const seen = (v: Vec3): Vec3 => rotateInverse(body.humerus, v);
  const inHand = {
    grip: seen(scale(from.along, -at)),
    along: seen(from.along),
    toe: seen(from.toe),
  };
  return { ...flight, catchS, velocity: scale(off, 1 / fallS), bend, inHand };
}

/** What the hands do at `timeS`. */
export function handsDuring(flight: Flight | null, timeS: number): Hands {
  if (flight === null || timeS < flight.releaseS) return { do: 'hold' };
  const { releaseS, leaveS, catchS, from, velocity, bend, inHand } = flight;
  if (catchS !== null && inHand !== null && timeS >= catchS) return { do: 'carry', bend, inHand };
  const open = smooth((timeS - releaseS) / (leaveS - releaseS));
  const way = catchS === null ? 0 : smooth((timeS - leaveS) / (catchS - leaveS));
  const club =
    timeS < leaveS ? null : landed({ ...from, grip: fallen(from.grip, velocity, timeS - leaveS) });
  return { do: 'wait', open, way, bend, club };
}

/** On the ground it lies. */
function landed(club: Club): Club {
  const { grip, along } = club;
  const lowest = grip.y + Math.min(BUILD.shaft * along.y, -BUILD.butt * along.y) - 0.015;
  return lowest >= 0 ? club : { ...club, grip: add(grip, vec3(0, -lowest, 0)) };
}

/** Long enough a fall for a still picture of a catch, s. */
const USUAL_FALL_S = 0.36;

/** The hands at a catch of which only the body at release and catch is known. */
export const caughtHands = (atRelease: Segments | null, atCatch: Segments | null): Hands =>
  handsDuring(
    flightOf((s) => (s < USUAL_FALL_S ? atRelease : atCatch), 0, USUAL_FALL_S),
    USUAL_FALL_S,
  );
