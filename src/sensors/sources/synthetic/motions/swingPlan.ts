import { near } from '../golfer.ts';
import type { Pose } from '../pose.ts';
import { type Scene, between } from '../scene.ts';
import { bendTo } from './rehearsalPlan.ts';

/** The course of the chest's turn: rates in deg/s, angles in deg, times in s. */
export interface TurnPlan {
  readonly top: Pose;
  readonly peakRate: number;
  /** Top to delivery, delivery to impact. */
  readonly deliveryAfterS: number;
  readonly impactAfterS: number;
  readonly deliveryTurn: number;
  readonly impactTurn: number;
  readonly impactRate: number;
  readonly finishTurn: number;
  readonly finishAfterS: number;
}

// Mean rate over peak rate from the top to delivery; a little above half, so that the turn's rate is
// a cubic in time which rises all the way (12 (share - 0.5) is its first derivative, scaled).
export const SHARE = 0.53;
// Rate after impact: (1 - s)^2 (1 + 0.8 s) of its value there, which covers 0.4 of rate x time.
const FOLLOW = 0.4;

/** Draws until the downswing takes 0.23-0.30 s with its peak in the given band. */
export function planTurn(scene: Scene, peak: readonly [number, number]): TurnPlan {
  for (let i = 0; i < 2000; i++) {
    const top = near(scene.random, scene.golfer.top, 1.5);
    const peakRate = between(scene, ...peak);
    const impactAfterS = between(scene, 0.04, 0.06);
    const impactTurn = between(scene, 21, 34);
    const impactRate = peakRate * between(scene, 0.88, 0.93);
    const deliveryTurn = impactTurn - (impactAfterS * (peakRate + impactRate)) / 2;
    const deliveryAfterS = (deliveryTurn - top.turnDeg) / (SHARE * peakRate);
    const downswing = deliveryAfterS + impactAfterS;
    if (downswing < 0.232 || downswing > 0.297) continue;
    const finishTurn = between(scene, 85, 105);
    const finishAfterS = (finishTurn - impactTurn) / (FOLLOW * impactRate);
    const times = { deliveryAfterS, impactAfterS, finishAfterS };
    return { top, peakRate, deliveryTurn, impactTurn, impactRate, finishTurn, ...times };
  }
  throw new Error('no full swing found in the bands');
}

/** All but the arm's third angle, which follows from the rotation to be kept. */
type SwingPose = Omit<Pose, 'externalRotationDeg'>;

export interface SwingPoses {
  readonly delivery: SwingPose;
  readonly impact: SwingPose;
  readonly finish: SwingPose;
}

export function planPoses(scene: Scene, plan: TurnPlan, addedDeg: number): SwingPoses {
  const impactLateral = between(scene, 21, 29);
  const deliveryLateral = impactLateral - between(scene, 11, 15);
  const trunk = bendTo(plan.top, plan.deliveryTurn, deliveryLateral, addedDeg);
  const planeDeg = plan.top.planeDeg + between(scene, 12, 22);
  const elevationDeg = between(scene, 36, 44);
  return {
    delivery: { ...trunk, planeDeg, elevationDeg },
    impact: {
      turnDeg: plan.impactTurn,
      lateralDeg: impactLateral,
      flexionDeg: Math.max(26, Math.min(39, trunk.flexionDeg - between(scene, 2, 5))),
      planeDeg: planeDeg + between(scene, 8, 14),
      elevationDeg: elevationDeg - between(scene, 1, 4),
    },
    finish: {
      turnDeg: plan.finishTurn,
      lateralDeg: between(scene, 5, 14),
      flexionDeg: between(scene, -4, 8),
      planeDeg: between(scene, 105, 120),
      elevationDeg: between(scene, 75, 95),
    },
  };
}
