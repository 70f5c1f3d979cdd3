import { type Quat, rotate } from '../../math/quat.ts';
import { UNIT_X, type Vec3, add, vec3 } from '../../math/vec3.ts';

/** Point on the drawing, metres, x to the right and y down, origin between the hips. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

export type ViewName = 'faceOn' | 'downTheLine';

/**
 * Right-handed golfer, global frame (X ahead, Y up, Z right). Face on looks back along X: the golfer's
 * right is on the viewer's left. Down the line looks along -Z to the target: ahead is on the right.
 * A left-handed golfer's frames are mirrored at the border; the drawing mirrors them back.
 */
export function project(view: ViewName, leftHanded: boolean, p: Vec3): Point {
  const x = view === 'faceOn' ? -p.z : p.x;
  return { x: leftHanded ? -x : x, y: -p.y };
}

/** Drawn sizes, m: a figure, not a measurement. */
const HIPS_HALF = 0.15;
const SHOULDERS_HALF = 0.2;
const TRUNK = 0.5;
const DEPTH_LOW = 0.1;
const DEPTH_HIGH = 0.09;
const UPPER_ARM = 0.31;
const NECK = 0.2;

const trunkCorners: readonly Vec3[] = [
  ...[-1, 1].flatMap((side) =>
    [-1, 1].map((front) => vec3(front * DEPTH_LOW, 0, side * HIPS_HALF)),
  ),
  ...[-1, 1].flatMap((side) =>
    [-1, 1].map((front) => vec3(front * DEPTH_HIGH, TRUNK, side * SHOULDERS_HALF)),
  ),
];

const cross2 = (o: Point, a: Point, b: Point): number =>
  (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);

function chain(points: readonly Point[]): Point[] {
  const out: Point[] = [];
  for (const p of points) {
    for (;;) {
      const [a, b] = [out.at(-2), out.at(-1)];
      if (a === undefined || b === undefined || cross2(a, b, p) > 0) break;
      out.pop();
    }
    out.push(p);
  }
  return out.slice(0, -1);
}

/** Convex hull, counted once round (Andrew's monotone chain). */
export function hull(points: readonly Point[]): Point[] {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  return [...chain(sorted), ...chain(sorted.reverse())];
}

export interface Figure {
  readonly trunk: readonly Point[];
  /** Mid-line of the front of the trunk: shows the way the chest faces. */
  readonly front: readonly [Point, Point];
  /** The front of the trunk looks to the viewer. */
  readonly facing: boolean;
  readonly head: Point;
  readonly arm: readonly [Point, Point];
  /** From the elbow the way the upper arm is turned (its X axis). */
  readonly turned: readonly [Point, Point];
}

/** The figure in one view from both segment poses. */
export function figure(
  view: ViewName,
  leftHanded: boolean,
  pose: { readonly thorax: Quat; readonly humerus: Quat },
): Figure {
  const at = (p: Vec3): Point => project(view, leftHanded, p);
  const trunk = (p: Vec3): Vec3 => rotate(pose.thorax, p);
  const forward = trunk(UNIT_X);
  const shoulder = trunk(vec3(0, TRUNK - 0.03, SHOULDERS_HALF + 0.01));
  const elbow = add(shoulder, rotate(pose.humerus, vec3(0, -UPPER_ARM, 0)));
  const turned = add(elbow, rotate(pose.humerus, vec3(0.14, 0, 0)));
  return {
    trunk: hull(trunkCorners.map((corner) => at(trunk(corner)))),
    front: [at(trunk(vec3(DEPTH_LOW, 0.04, 0))), at(trunk(vec3(DEPTH_HIGH, TRUNK - 0.02, 0)))],
    facing: view === 'faceOn' ? forward.x > 0 : forward.z > 0,
    head: at(trunk(vec3(0.03, TRUNK + NECK, 0))),
    arm: [at(shoulder), at(elbow)],
    turned: [at(elbow), at(turned)],
  };
}
