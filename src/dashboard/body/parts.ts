import { type Quat, rotate } from '../../math/quat.ts';
import { UNIT_X, type Vec3, add, lerp, scale, vec3 } from '../../math/vec3.ts';
import { BUILD } from './build.ts';
import { around, egg, limb, line } from './outline.ts';
import { type Point, type ViewName, nearness, project } from './project.ts';
import type { Arm, Leg, Skeleton } from './skeleton.ts';

/** One outline of the figure. `measured` parts are solid, all others pale. */
export interface Part {
  readonly name: string;
  readonly measured: boolean;
  readonly path: string;
  /** Greater is nearer to the viewer. */
  readonly near: number;
}

/** Half thickness of the limbs at either end, m: for the look. */
const THICK = {
  thigh: [0.082, 0.056],
  shank: [0.056, 0.036],
  upperArm: [0.05, 0.042],
  forearm: [0.041, 0.027],
  neck: [0.05, 0.046],
  finger: [0.03, 0.016],
} as const;
const FIST = 0.043;

class Drawer {
  readonly parts: Part[] = [];
  readonly #view: ViewName;
  readonly #leftHanded: boolean;

  constructor(view: ViewName, leftHanded: boolean) {
    this.#view = view;
    this.#leftHanded = leftHanded;
  }

  at = (p: Vec3): Point => project(this.#view, this.#leftHanded, p);
  near = (p: Vec3): number => nearness(this.#view, p);

  add(name: string, path: string, near: number, measured = false): void {
    this.parts.push({ name, measured, path, near });
  }

  limb(
    name: string,
    a: Vec3,
    b: Vec3,
    [ra, rb]: readonly [number, number],
    measured = false,
  ): void {
    const near = this.near(lerp(a, b, 0.5));
    this.add(name, limb(this.at(a), ra, this.at(b), rb), near, measured);
  }
}

/** Points round an oval in a segment's level plane. */
const ring = (q: Quat, centre: Vec3, deep: number, wide: number): Vec3[] =>
  Array.from({ length: 12 }, (_, i) => {
    const a = (i * Math.PI) / 6;
    return add(centre, rotate(q, vec3(deep * Math.cos(a), 0, wide * Math.sin(a))));
  });

function trunk(d: Drawer, s: Skeleton): void {
  const up = (y: number): Vec3 => add(s.lumbar, rotate(s.thorax, vec3(0, y, 0)));
  const chest = [
    ...ring(s.thorax, up(0.02), BUILD.waistDepth, BUILD.waistHalf),
    ...ring(s.thorax, up(0.27), BUILD.chestDepth + 0.01, BUILD.shouldersHalf - 0.02),
    ...ring(
      s.thorax,
      up(BUILD.trunk - 0.01),
      BUILD.waistDepth - 0.025,
      BUILD.shouldersHalf - 0.012,
    ),
  ];
  const middle = d.near(up(0.2));
  d.add('trunk', around(chest.map(d.at)), middle, true);
  const front = (y: number, deep: number): Vec3 => add(up(y), rotate(s.thorax, vec3(deep, 0, 0)));
  const faces = d.near(rotate(s.thorax, UNIT_X));
  const mark = [front(0.1, BUILD.waistDepth), front(0.33, BUILD.chestDepth)];
  if (faces > 0) d.add('front', line(mark.map(d.at)), middle + 0.001, true);
  else d.add('front', '', middle + 0.001, true);
  const low = (y: number): Vec3 => add(s.hips, rotate(s.pelvis, vec3(0, y, 0)));
  const hips = [
    ...ring(s.pelvis, low(0.1), BUILD.waistDepth, BUILD.waistHalf + 0.01),
    ...ring(s.pelvis, low(-0.02), BUILD.chestDepth, BUILD.hipsHalf),
    ...ring(s.pelvis, low(-0.06), BUILD.chestDepth - 0.02, BUILD.hipsHalf - 0.03),
  ];
  d.add('hips', around(hips.map(d.at)), d.near(s.hips) - 0.001);
}

function head(d: Drawer, s: Skeleton): void {
  const { neck, crown, gaze } = s;
  const to = d.at(add(s.head, crown));
  const centre = d.at(s.head);
  const axis = { x: to.x - centre.x, y: to.y - centre.y };
  const near = d.near(s.head);
  d.limb('neck', add(neck, scale(crown, -0.02)), add(s.head, scale(crown, -0.04)), THICK.neck);
  d.add('head', egg(centre, axis, BUILD.headHalf, BUILD.headWide), near + 0.01);
  const low = add(s.head, scale(crown, -0.02));
  const face = [0.05, 0.088].map((r) => d.at(add(low, scale(gaze, r))));
  d.add(
    'nose',
    limb(face[0] as Point, 0.024, face[1] as Point, 0.011),
    near + (d.near(gaze) > 0 ? 0.02 : -0.02),
  );
}

function leg(d: Drawer, name: string, side: 1 | -1, { hip, knee, ankle }: Leg): void {
  d.limb(`${name}-thigh`, hip, knee, THICK.thigh);
  d.limb(`${name}-shank`, knee, ankle, THICK.shank);
  const out = side * 0.2;
  const ahead = (x: number, y: number, z: number): Vec3 =>
    vec3(ankle.x + x, y, ankle.z + z + out * x);
  const long = BUILD.footLength;
  const sole = [-0.07, long - 0.07].flatMap((x) => [-0.035, 0.035].map((z) => ahead(x, 0.004, z)));
  const upper = [ahead(-0.06, 0.07, 0), ahead(0.03, 0.085, 0), ahead(long - 0.075, 0.035, 0)];
  d.add(`${name}-foot`, around([...sole, ...upper].map(d.at)), d.near(ankle) + 0.03);
}

function hand(d: Drawer, name: string, { wrist, fist }: Arm, thumb: Vec3, open: number): void {
  const way = scale(add(fist, scale(wrist, -1)), 1 / BUILD.fist);
  const tip = add(wrist, scale(way, BUILD.fist + (BUILD.hand - BUILD.fist) * open));
  const near = d.near(fist) + 0.012;
  const [ra, rb] = [FIST - 0.012 * open, FIST - 0.025 * open];
  d.add(`${name}-hand`, limb(d.at(lerp(wrist, fist, 1 - 0.5 * open)), ra, d.at(tip), rb), near);
  // An open hand shows its thumb.
  const off = add(lerp(fist, tip, 0.35), scale(thumb, 0.075 * open));
  d.add(`${name}-thumb`, limb(d.at(fist), 0.016, d.at(off), 0.012), near - 0.001);
}

function arms(d: Drawer, s: Skeleton): void {
  for (const [name, arm, open] of [
    ['lead', s.leadArm, s.leadOpen],
    ['trail', s.trailArm, s.trailOpen],
  ] as const) {
    d.limb(`${name}-forearm`, arm.elbow, arm.wrist, THICK.forearm);
    hand(d, name, arm, rotate(s.thorax, vec3(0, 1, name === 'lead' ? 0.4 : -0.4)), open);
    d.limb(`${name}-upperarm`, arm.shoulder, arm.elbow, THICK.upperArm, name === 'trail');
  }
}

function club(d: Drawer, { club: c }: Skeleton): void {
  if (c === null) return;
  const along = (m: number): Vec3 => add(c.grip, scale(c.along, m));
  const end = along(BUILD.shaft);
  const near = d.near(along(0.1));
  d.add('shaft', line([along(-BUILD.butt), end].map(d.at)), near);
  d.add('grip', line([along(-BUILD.butt), along(0.14)].map(d.at)), near + 0.001);
  const toe = add(end, scale(c.toe, BUILD.clubHead));
  d.add('clubhead', limb(d.at(end), 0.012, d.at(toe), 0.022), d.near(end));
}

/** The figure in one view, far parts first. */
export function partsOf(s: Skeleton, view: ViewName, leftHanded: boolean): readonly Part[] {
  const d = new Drawer(view, leftHanded);
  leg(d, 'lead', -1, s.lead);
  leg(d, 'trail', 1, s.trail);
  trunk(d, s);
  head(d, s);
  arms(d, s);
  club(d, s);
  return d.parts.sort((a, b) => a.near - b.near);
}

const IN_GHOST = ['trunk', 'head', 'trail-upperarm'];

/** What of another posture is drawn dashed behind the figure. */
export const ghostOf = (s: Skeleton, view: ViewName, leftHanded: boolean): readonly Part[] =>
  partsOf(s, view, leftHanded).filter(({ name }) => IN_GHOST.includes(name));

/** The places where sensors are worn: breastbone, and the lower outside of the trail upper arm. */
export function sensorSpot(s: Skeleton, sensor: 'chest' | 'trailArm'): Vec3 {
  if (sensor === 'chest') return add(s.lumbar, rotate(s.thorax, vec3(BUILD.chestDepth, 0.26, 0)));
  const on = lerp(s.trailArm.shoulder, s.trailArm.elbow, 0.72);
  return add(on, rotate(s.humerus, vec3(0, 0, 0.02)));
}
