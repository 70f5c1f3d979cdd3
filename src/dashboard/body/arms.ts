import { clamp } from '../../math/angle.ts';
import { rotate } from '../../math/quat.ts';
import {
  UNIT_X,
  UNIT_Y,
  type Vec3,
  add,
  dot,
  lerp,
  norm,
  normalise,
  scale,
  subtract,
  vec3,
} from '../../math/vec3.ts';
import { BUILD } from './build.ts';
import { reach } from './reach.ts';
import type { Arm, Segments } from './skeleton.ts';

/** Elbow to the middle of the closed hand, m. */
export const FOREARM = BUILD.forearm + BUILD.fist;
export function smooth(x: number): number {
  const t = clamp(x, 0, 1);
  return t * t * (3 - 2 * t);
}

/** How far the chest is turned away from the target: 0 at address and after it, 1 on the way to the top. */
export const turnedAway = ({ thorax }: Segments): number =>
  smooth((rotate(thorax, UNIT_X).z - 0.15) / 0.5);

/** From the lead shoulder to its hand on the grip, m: the arm hangs easily at address and is nearly straight at the top. */
export const leadReachOf = (s: Segments): number =>
  (0.9 + 0.07 * turnedAway(s)) * (BUILD.upperArm + FOREARM);

/** How far it is turned through toward the target, 0 to 1. */
export const turnedThrough = ({ thorax }: Segments): number =>
  smooth((-rotate(thorax, UNIT_X).z - 0.3) / 0.6);

/** The lead shoulder comes across the chest on the way to the top, m in the thorax. */
const LEAD_ACROSS = vec3(0.07, -0.01, 0.03);
const SHOULDER_DROP = -0.02;

export function shoulderOf(side: 1 | -1, neck: Vec3, s: Segments): Vec3 {
  const rest = vec3(0, SHOULDER_DROP, side * BUILD.shouldersHalf);
  const at = side === 1 ? rest : add(rest, scale(LEAD_ACROSS, turnedAway(s)));
  return add(neck, rotate(s.thorax, at));
}

export const elbowOf = (shoulder: Vec3, { humerus }: Segments): Vec3 =>
  add(shoulder, rotate(humerus, vec3(0, -BUILD.upperArm, 0)));

/** Direction of the trail forearm with the elbow bent by `bend` rad about the humerus' own Z. */
export const forearmAt = ({ humerus }: Segments, bend: number): Vec3 =>
  rotate(humerus, vec3(Math.sin(bend), -Math.cos(bend), 0));

/** Bend of the trail elbow at the top, rad. */
const BENT = 1.75;

/** Where the hands hang at address, and where the bent elbow brings them at the top. */
function wanted(s: Segments, neck: Vec3, elbow: Vec3): Vec3 {
  const ahead = rotate(s.thorax, UNIT_X);
  const hanging = add(add(neck, scale(ahead, 0.2)), scale(UNIT_Y, -0.5));
  const bent = add(elbow, scale(forearmAt(s, BENT), FOREARM));
  return lerp(hanging, bent, Math.max(turnedAway(s), 0.7 * turnedThrough(s)));
}

/**
 * Where both hands meet: a forearm's length from the trail elbow, `leadReach` from the lead shoulder,
 * and of these points the one nearest to `near`. Where the arms are too far apart, as near as they come.
 */
function meetingOf(elbow: Vec3, lead: Vec3, leadReach: number, near: Vec3): Vec3 {
  const between = subtract(lead, elbow);
  const apart = Math.max(0.05, norm(between));
  const axis = normalise(between) ?? UNIT_Y;
  const onAxis = (FOREARM ** 2 - leadReach ** 2 + apart * apart) / (2 * apart);
  const along = clamp(onAxis, -FOREARM, FOREARM);
  const round = Math.sqrt(Math.max(0, FOREARM ** 2 - along ** 2));
  const way = subtract(near, elbow);
  const side = normalise(subtract(way, scale(axis, dot(way, axis)))) ?? acrossOf(axis);
  return add(add(elbow, scale(axis, along)), scale(side, round));
}

/** Some unit vector across `axis`. */
function acrossOf(axis: Vec3): Vec3 {
  const across = Math.abs(axis.x) < 0.9 ? UNIT_X : UNIT_Y;
  return normalise(subtract(across, scale(axis, dot(across, axis)))) ?? UNIT_Y;
}

/** The middle of the trail hand while both are on the grip, `leadReach` m from the lead shoulder. */
export const handsAt = (s: Segments, neck: Vec3, elbow: Vec3, leadReach: number): Vec3 =>
  meetingOf(elbow, shoulderOf(-1, neck, s), leadReach, wanted(s, neck, elbow));

export const armAlong = (shoulder: Vec3, elbow: Vec3, forearm: Vec3): Arm => ({
  shoulder,
  elbow,
  wrist: add(elbow, scale(forearm, BUILD.forearm)),
  fist: add(elbow, scale(forearm, FOREARM)),
});

/** Side of the elbow that is not measured, in the thorax: back and down. */
const ELBOW_SIDE = vec3(-1, -1, -0.3);

/** The lead arm with its hand at `hand`, or as near as it comes. */
export function leadArmTo(hand: Vec3, neck: Vec3, s: Segments): Arm {
  const shoulder = shoulderOf(-1, neck, s);
  const side = rotate(s.thorax, ELBOW_SIDE);
  const lengths = [BUILD.upperArm, FOREARM] as const;
  const { joint, end } = reach(shoulder, hand, lengths, side, rotate(s.thorax, vec3(0, 0, -1)));
  return { shoulder, elbow: joint, wrist: lerp(joint, end, BUILD.forearm / FOREARM), fist: end };
}

/** Where the lead hand hangs when it holds nothing. */
export function hangingHand(neck: Vec3, s: Segments): Vec3 {
  const ahead = rotate(s.thorax, UNIT_X);
  const down = normalise(add(scale(UNIT_Y, -1), scale(ahead, 0.12))) ?? scale(UNIT_Y, -1);
  return add(shoulderOf(-1, neck, s), scale(down, 0.99 * (BUILD.upperArm + FOREARM)));
}
