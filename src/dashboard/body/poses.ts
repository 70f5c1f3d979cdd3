import { radians } from '../../math/angle.ts';
import { aboutX, aboutY, aboutZ, multiply } from '../../math/quat.ts';
import type { PoseView } from '../../streaming/contract.ts';

/** Joint angles of a drawn posture, degrees; signs as everywhere (turn toward the target +, lateral to the trail side +). */
export interface Angles {
  readonly turn?: number;
  readonly lateral?: number;
  readonly flexion?: number;
  readonly plane?: number;
  readonly elevation?: number;
  readonly rotation?: number;
}

/** The pose of the angles: thorax Y-X-Z, humerus in it Y-X-Y. */
export function poseOf(a: Angles): PoseView {
  const turnAndBend = multiply(aboutY(radians(a.turn ?? 0)), aboutX(radians(a.lateral ?? 0)));
  const thorax = multiply(turnAndBend, aboutZ(-radians(a.flexion ?? 0)));
  const raised = multiply(aboutY(radians(a.plane ?? 90)), aboutX(-radians(a.elevation ?? 0)));
  const inThorax = multiply(raised, aboutY(-radians(a.rotation ?? 90)));
  return { thorax, humerus: multiply(thorax, inThorax) };
}

/** The drill's own postures: drawn to meet every target of the standard plan, nobody's measurements. */
export const DRILL_ANGLES = {
  address: { turn: 0, flexion: 38, lateral: 6, plane: 84, elevation: 44, rotation: 78 },
  top: { turn: -94, lateral: -32, flexion: 5, plane: 32, elevation: 72, rotation: 66 },
  caught: { turn: -40, lateral: -8, flexion: 37, plane: 42, elevation: 52, rotation: 66 },
} as const satisfies Record<string, Required<Angles>>;

/** Postures of the drawings: illustrations within the bands of the design, nobody's measurements. */
export const POSES = {
  upright: poseOf({}),
  bow: poseOf({ flexion: 48, elevation: 40 }),
  armRaised: poseOf({ elevation: 90 }),
  abducted: poseOf({ plane: 12, elevation: 88, rotation: 10 }),
  turnedOut: poseOf({ plane: 12, elevation: 88, rotation: 85 }),
  trailSide: poseOf({ lateral: 28 }),
  leadSide: poseOf({ lateral: -28 }),
  address: poseOf(DRILL_ANGLES.address),
  top: poseOf(DRILL_ANGLES.top),
  caught: poseOf(DRILL_ANGLES.caught),
} as const;
