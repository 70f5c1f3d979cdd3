import { type Random, gaussian, uniform } from '../../../math/random.ts';
import { type Build, buildOf } from './figure.ts';
import type { Pose } from './pose.ts';

/** What stays the same through one session. Angles within the plausibility bands of the design. */
export interface Golfer {
  readonly build: Build;
  readonly address: Pose;
  readonly top: Pose;
  /** What this golfer's good rehearsals centre on, deg. */
  readonly addedFlexionDeg: number;
  readonly keptRotationDeg: number;
  readonly backswingS: number;
  /** Spread of angles from one address to the next, deg. */
  readonly addressSpreadDeg: number;
}

/** Upright, arms hanging: the posture that the segment frames are defined by. */
export const UPRIGHT: Pose = {
  turnDeg: 0,
  lateralDeg: 0,
  flexionDeg: 0,
  planeDeg: 90,
  elevationDeg: 0,
  externalRotationDeg: 90,
};

export function createGolfer(random: Random): Golfer {
  const flexionDeg = uniform(random, 32, 43);
  return {
    build: buildOf(uniform(random, 1.6, 1.92)),
    address: {
      turnDeg: 0,
      lateralDeg: uniform(random, 5, 8),
      flexionDeg,
      planeDeg: uniform(random, 78, 90),
      elevationDeg: flexionDeg + uniform(random, 2, 9),
      externalRotationDeg: uniform(random, 70, 85),
    },
    top: {
      turnDeg: uniform(random, -100, -90),
      lateralDeg: uniform(random, -36, -29),
      flexionDeg: uniform(random, -1, 10),
      planeDeg: uniform(random, 25, 40),
      elevationDeg: uniform(random, 64, 80),
      externalRotationDeg: uniform(random, 58, 74),
    },
    addedFlexionDeg: uniform(random, 5, 7.5),
    keptRotationDeg: uniform(random, -9, -4),
    backswingS: uniform(random, 0.75, 0.95),
    addressSpreadDeg: 0.8,
  };
}

/** A pose near `pose`, each angle off by a normal spread, deg, cut at two of it. */
export function near(random: Random, pose: Pose, spreadDeg: number): Pose {
  const off = (): number => spreadDeg * Math.max(-2, Math.min(2, gaussian(random)));
  return {
    turnDeg: pose.turnDeg + off(),
    lateralDeg: pose.lateralDeg + off(),
    flexionDeg: pose.flexionDeg + off(),
    planeDeg: pose.planeDeg + off(),
    elevationDeg: pose.elevationDeg + off(),
    externalRotationDeg: pose.externalRotationDeg + off(),
  };
}
