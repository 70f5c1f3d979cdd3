import { type Vec3, add, dot, norm, normalise, scale, subtract } from '../../math/vec3.ts';

export interface Reach {
  /** Elbow or knee. */
  readonly joint: Vec3;
  /** The target, or as near to it as the limb comes. */
  readonly end: Vec3;
}

const perpendicular = (v: Vec3, to: Vec3): Vec3 => subtract(v, scale(to, dot(v, to)));

/** The limb is never quite straight, so that the side of its joint stays known. */
const STRAIGHTEST = 0.9995;

/**
 * Two bones of lengths `upper` and `lower` (m) from `root` to `target`. The joint lies on the side of
 * `toward`; where that lies along the limb, of `otherwise`.
 */
export function reach(
  root: Vec3,
  target: Vec3,
  [upper, lower]: readonly [number, number],
  toward: Vec3,
  otherwise: Vec3,
): Reach {
  const way = subtract(target, root);
  const along = normalise(way) ?? otherwise;
  const nearest = Math.abs(upper - lower) + 1e-6;
  const far = Math.min((upper + lower) * STRAIGHTEST, Math.max(nearest, norm(way)));
  const before = (far * far + upper * upper - lower * lower) / (2 * far);
  const height = Math.sqrt(Math.max(0, upper * upper - before * before));
  const side =
    normalise(perpendicular(toward, along)) ?? normalise(perpendicular(otherwise, along));
  const joint = add(add(root, scale(along, before)), scale(side ?? toward, height));
  return { joint, end: add(root, scale(along, far)) };
}
