import type { Quat } from '../../math/quat.ts';
import type { Vec3 } from '../../math/vec3.ts';

/*
 * All points: m in the room of the right-handed equivalent, X ahead to the ball, Y up, Z to the trail side,
 * origin on the ground between the feet.
 */

/** The two measured segments, axes in the room. */
export interface Segments {
  readonly thorax: Quat;
  readonly humerus: Quat;
}

export interface Leg {
  readonly hip: Vec3;
  readonly knee: Vec3;
  readonly ankle: Vec3;
}

export interface Arm {
  readonly shoulder: Vec3;
  readonly elbow: Vec3;
  readonly wrist: Vec3;
  /** Middle of the closed hand. */
  readonly fist: Vec3;
}

/** Where a club is; unit vectors. */
export interface Club {
  /** Middle of the grip. */
  readonly grip: Vec3;
  /** From the grip to the head. */
  readonly along: Vec3;
  /** From the heel of the head to its toe. */
  readonly toe: Vec3;
}

export interface Trunk {
  readonly pelvis: Quat;
  readonly hips: Vec3;
  readonly lumbar: Vec3;
  readonly neck: Vec3;
  readonly head: Vec3;
  /** Unit vectors: to the crown, and the way it looks. */
  readonly crown: Vec3;
  readonly gaze: Vec3;
  readonly trail: Leg;
  readonly lead: Leg;
}

/** A whole body as it is drawn. Measured: the thorax' axes and the trail upper arm; the rest is drawn to it. */
export interface Skeleton extends Segments, Trunk {
  readonly trailArm: Arm;
  readonly leadArm: Arm;
  /** 0 closed, 1 open. */
  readonly trailOpen: number;
  readonly leadOpen: number;
  readonly club: Club | null;
}
