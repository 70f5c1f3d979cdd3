import { clamp } from '../../math/angle.ts';
import { IDENTITY, type Quat, rotate, slerp } from '../../math/quat.ts';
import {
  UNIT_X,
  UNIT_Y,
  type Vec3,
  add,
  dot,
  normalise,
  scale,
  subtract,
  vec3,
} from '../../math/vec3.ts';
import { BUILD, ankleOf } from './build.ts';
import { reach } from './reach.ts';
import type { Leg, Trunk } from './skeleton.ts';

/** Share of the chest's turn and bend that the pelvis goes along. */
const PELVIS_SHARE = 0.5;
/** Share of the trunk's way out that the hips go back for, so that the weight stays over the feet. */
const COUNTER = { ahead: 0.42, aside: 0.2 };
const MID_FOOT = 0.03;

const LEG = BUILD.thigh + BUILD.shank;
/** Length of the legs over their greatest: almost straight upright, knees a little bent at address. */
const straightness = (lean: number): number => 0.995 - 0.022 * clamp(lean / 0.6, 0, 1);

/** Height of the hips at which both feet stay planted, m. */
function hipHeight(hips: Vec3, pelvis: Quat, lean: number): number {
  const length = LEG * straightness(lean);
  const heights = ([1, -1] as const).map((side) => {
    const joint = rotate(pelvis, vec3(0, 0, side * BUILD.hipJoint));
    const ankle = ankleOf(side);
    const aside = Math.hypot(hips.x + joint.x - ankle.x, hips.z + joint.z - ankle.z);
    return ankle.y + Math.sqrt(Math.max(0.04, length * length - aside * aside)) - joint.y;
  });
  return Math.min(...heights);
}

function legOf(side: 1 | -1, hips: Vec3, pelvis: Quat): Leg {
  const hip = add(hips, rotate(pelvis, vec3(0, 0, side * BUILD.hipJoint)));
  const outward = vec3(1, 0, side * 0.22);
  const { joint, end } = reach(hip, ankleOf(side), [BUILD.thigh, BUILD.shank], outward, UNIT_X);
  return { hip, knee: joint, ankle: end };
}

/** The head stays over the ball while the chest turns under it; upright it looks ahead. */
function headOf(neck: Vec3, thorax: Quat, ball: Vec3) {
  const up = rotate(thorax, UNIT_Y);
  const crown = normalise(add(scale(up, 0.62), scale(UNIT_Y, 0.38))) ?? up;
  const head = add(neck, scale(crown, BUILD.neck + BUILD.headHalf));
  const down = clamp((Math.acos(clamp(up.y, -1, 1)) - 0.2) / 0.35, 0, 1);
  const toBall = normalise(subtract(ball, head)) ?? UNIT_X;
  const look = add(scale(UNIT_X, 1 - down), scale(toBall, down));
  const level = subtract(look, scale(crown, 0.85 * dot(look, crown)));
  return { head, crown, gaze: normalise(level) ?? UNIT_X };
}

/** What stands between the ground and the head when the chest is where it was measured. */
export function trunkOf(thorax: Quat, ball: Vec3): Trunk {
  const pelvis = slerp(IDENTITY, thorax, PELVIS_SHARE);
  const lumbar = rotate(pelvis, BUILD.lumbar);
  const spine = rotate(thorax, vec3(0, BUILD.trunk, 0));
  const out = add(lumbar, spine);
  const level = vec3(MID_FOOT - COUNTER.ahead * out.x, 0, -COUNTER.aside * out.z);
  const lean = Math.acos(clamp(rotate(thorax, UNIT_Y).y, -1, 1));
  const hips = vec3(level.x, hipHeight(level, pelvis, lean), level.z);
  const neck = add(hips, out);
  return {
    pelvis,
    hips,
    lumbar: add(hips, lumbar),
    neck,
    ...headOf(neck, thorax, ball),
    trail: legOf(1, hips, pelvis),
    lead: legOf(-1, hips, pelvis),
  };
}
