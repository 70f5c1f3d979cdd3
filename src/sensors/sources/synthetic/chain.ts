import {
  type Quat,
  IDENTITY,
  aboutX,
  aboutY,
  aboutZ,
  multiply,
  rotate,
} from '../../../math/quat.ts';
import { type Vec3, UNIT_X, UNIT_Y, UNIT_Z, ZERO, add, cross, scale } from '../../../math/vec3.ts';
import type { Jet } from './channel.ts';

/** A frame that moves: all vectors in the global frame, SI. */
export interface Kinematics {
  /** Frame to global. */
  readonly q: Quat;
  /** Angular rate, rad/s. */
  readonly rate: Vec3;
  /** Angular acceleration, rad/s^2. */
  readonly angularAcc: Vec3;
  readonly position: Vec3;
  readonly velocity: Vec3;
  readonly acceleration: Vec3;
}

export const GROUND: Kinematics = {
  q: IDENTITY,
  rate: ZERO,
  angularAcc: ZERO,
  position: ZERO,
  velocity: ZERO,
  acceleration: ZERO,
};

const TURNS = {
  x: { axis: UNIT_X, by: aboutX },
  y: { axis: UNIT_Y, by: aboutY },
  z: { axis: UNIT_Z, by: aboutZ },
} as const;

/** Turns the frame about one of its own axes; exact rate and acceleration of the turned frame. */
export function turnAbout(k: Kinematics, name: 'x' | 'y' | 'z', angle: Jet): Kinematics {
  const { axis, by } = TURNS[name];
  const e = rotate(k.q, axis);
  const spin = scale(e, angle.v);
  return {
    ...k,
    q: multiply(k.q, by(angle.x)),
    rate: add(k.rate, spin),
    angularAcc: add(add(k.angularAcc, scale(e, angle.a)), cross(k.rate, spin)),
  };
}

/** Another point of the same body, `offset` in its frame, m. */
export function carry(k: Kinematics, offset: Vec3): Kinematics {
  const r = rotate(k.q, offset);
  const v = cross(k.rate, r);
  return {
    ...k,
    position: add(k.position, r),
    velocity: add(k.velocity, v),
    acceleration: add(k.acceleration, add(cross(k.angularAcc, r), cross(k.rate, v))),
  };
}

/** The same point with upright, still axes: where a chain with its own angles starts. */
export const upright = (k: Kinematics): Kinematics => ({
  ...k,
  q: IDENTITY,
  rate: ZERO,
  angularAcc: ZERO,
});

/** Moved along global axes by a displacement given with its derivatives. */
export const displaced = (k: Kinematics, x: Jet, y: Jet, z: Jet): Kinematics => ({
  ...k,
  position: add(k.position, { x: x.x, y: y.x, z: z.x }),
  velocity: add(k.velocity, { x: x.v, y: y.v, z: z.v }),
  acceleration: add(k.acceleration, { x: x.a, y: y.a, z: z.a }),
});
