import type { Vec3 } from '../../math/vec3.ts';

/** Point on the drawing, metres, x to the right and y down, origin on the ground between the feet. */
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

/** How near to the viewer, m. */
export const nearness = (view: ViewName, p: Vec3): number => (view === 'faceOn' ? p.x : p.z);

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
