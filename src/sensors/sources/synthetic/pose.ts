import { radians } from '../../../math/angle.ts';
import { type Quat, aboutX, aboutY, aboutZ, multiply } from '../../../math/quat.ts';
import type { ChannelName } from './coordinates.ts';

/** A posture in the angles that people speak of; signs as the coordinates'. */
export interface Pose {
  readonly turnDeg: number;
  readonly lateralDeg: number;
  readonly flexionDeg: number;
  readonly planeDeg: number;
  readonly elevationDeg: number;
  readonly externalRotationDeg: number;
}

export type TrunkPose = Pick<Pose, 'turnDeg' | 'lateralDeg' | 'flexionDeg'>;

export const TRUNK = ['turn', 'lateral', 'flexion'] as const satisfies readonly ChannelName[];
export const ARM = [
  'plane',
  'elevation',
  'externalRotation',
] as const satisfies readonly ChannelName[];

export type JointName = (typeof TRUNK)[number] | (typeof ARM)[number];
export const JOINTS: readonly JointName[] = [...TRUNK, ...ARM];

/** One joint's angle of a pose, rad. */
export const angleIn = (pose: Pose, joint: JointName): number => radians(pose[`${joint}Deg`]);

/** Thorax to global of a trunk pose: intrinsic Y-X-Z. */
export const thoraxIn = (p: TrunkPose): Quat =>
  multiply(
    multiply(aboutY(radians(p.turnDeg)), aboutX(radians(p.lateralDeg))),
    aboutZ(-radians(p.flexionDeg)),
  );
