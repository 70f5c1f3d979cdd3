import { radians } from '../../math/angle.ts';
import { fromRotationVector, rotate } from '../../math/quat.ts';
import {
  type Vec3,
  UNIT_X,
  add,
  dot,
  lerp,
  normalise,
  scale,
  subtract,
  vec3,
} from '../../math/vec3.ts';
import { shoulderOf, smooth, turnedAway, turnedThrough } from './arms.ts';
import { BUILD } from './build.ts';
import type { Club, Segments } from './skeleton.ts';

/** Normal of the plane that the club swings in, 55° steep (a choice), ahead and up. */
const PLANE = radians(55);
const NORMAL = vec3(Math.sin(PLANE), Math.cos(PLANE), 0);
/** How far the wrists hinge the shaft from the lead arm at the top, rad. A choice: the shaft stands well above the level. */
const HINGE = radians(52);
/** The shaft stands out from the arms at address, as a share of the plane's normal. */
const DROOP = 0.4;
/** Angle between shaft and sole (lie of a middle iron, from memory), rad. */
const LIE = radians(62);
const SOLE = 0.015;

/** Shaft from the hands down to the ground ahead; `null` where they are too high for that. */
function toGround(hands: Vec3): Vec3 {
  const down = Math.min(0.98, Math.max(0, (hands.y - SOLE) / BUILD.shaft));
  return vec3(Math.sqrt(1 - down * down), -down, 0);
}

/** Never through the ground: raised until the head lies on it. */
function above(hands: Vec3, along: Vec3): Vec3 {
  const lowest = -Math.max(0, hands.y - SOLE) / BUILD.shaft;
  if (along.y >= lowest) return along;
  const level = Math.hypot(along.x, along.z);
  const k = Math.sqrt(1 - lowest * lowest) / level;
  return level < 1e-9 ? vec3(1, 0, 0) : vec3(along.x * k, lowest, along.z * k);
}

/** The way the head points is fixed to the shaft: with the sole flat on the ground at address. */
function toeOf(along: Vec3): Vec3 {
  const across = normalise(subtract(NORMAL, scale(along, dot(NORMAL, along)))) ?? UNIT_X;
  return add(scale(along, Math.cos(LIE)), scale(across, Math.sin(LIE)));
}

/** The club in both hands: on the ground before the ball at address, hinged up by the wrists at the top. */
export function heldClub(hands: Vec3, neck: Vec3, s: Segments): Club {
  const arms = normalise(subtract(hands, shoulderOf(-1, neck, s))) ?? UNIT_X;
  const [away, through] = [turnedAway(s), turnedThrough(s)];
  const hinge = fromRotationVector(scale(NORMAL, -HINGE * (away - through)));
  const droop = scale(NORMAL, DROOP * (1 - away) * (1 - through));
  const swung = normalise(add(rotate(hinge, arms), droop)) ?? arms;
  const low = smooth((BUILD.shaft + 0.3 - hands.y) / 0.3) * (1 - away) * (1 - through);
  const mixed = normalise(lerp(swung, toGround(hands), low)) ?? swung;
  const along = above(hands, mixed);
  return { grip: hands, along, toe: toeOf(along) };
}
