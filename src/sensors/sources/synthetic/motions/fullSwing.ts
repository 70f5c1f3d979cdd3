import { degrees, radians } from '../../../../math/angle.ts';
import { type Jet, channelAt, jet } from '../channel.ts';
import { near } from '../golfer.ts';
import { measuresOf } from '../measures.ts';
import { ARM, type JointName, type Pose, TRUNK, angleIn } from '../pose.ts';
import { type Scene, between, pass, segmentsAt, wait } from '../scene.ts';
import { getReady, standUp } from './address.ts';
import { backswing } from './backswing.ts';
import { bendTo } from './rehearsalPlan.ts';
import { strike } from './strike.ts';

/** The course of the chest's turn: rates in deg/s, angles in deg, times in s. */
interface TurnPlan {
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
const SHARE = 0.53;
// Rate after impact: (1 - s)^2 (1 + 0.8 s) of its value there, which covers 0.4 of rate x time.
const FOLLOW = 0.4;

/** Draws until the downswing takes 0.23-0.30 s with its peak in the given band. */
function planTurn(scene: Scene, peak: readonly [number, number]): TurnPlan {
  for (let i = 0; i < 2000; i++) {
    const top = near(scene.random, scene.golfer.top, 1.5);
    const peakRate = between(scene, ...peak);
    const impactAfterS = between(scene, 0.04, 0.06);
    const impactTurn = between(scene, 21, 34);
    const impactRate = peakRate * between(scene, 0.88, 0.93);
    const deliveryTurn = impactTurn - (impactAfterS * (peakRate + impactRate)) / 2;
    const deliveryAfterS = (deliveryTurn - top.turnDeg) / (SHARE * peakRate);
    const downswing = deliveryAfterS + impactAfterS;
    if (downswing < 0.23 || downswing > 0.3) continue;
    const finishTurn = between(scene, 85, 105);
    const finishAfterS = (finishTurn - impactTurn) / (FOLLOW * impactRate);
    const times = { deliveryAfterS, impactAfterS, finishAfterS };
    return { top, peakRate, deliveryTurn, impactTurn, impactRate, finishTurn, ...times };
  }
  throw new Error('no full swing found in the bands');
}

function turnThrough(scene: Scene, plan: TurnPlan, topS: number): void {
  const deliveryS = topS + plan.deliveryAfterS;
  const impactS = deliveryS + plan.impactAfterS;
  const at = (x: number, v: number, a: number): Jet => jet(radians(x), radians(v), radians(a));
  pass(scene, 'turn', deliveryS, at(plan.deliveryTurn, plan.peakRate, 0));
  const slowing = (-1.2 * plan.impactRate) / plan.finishAfterS;
  pass(scene, 'turn', impactS, at(plan.impactTurn, plan.impactRate, slowing));
  pass(scene, 'turn', impactS + plan.finishAfterS, at(plan.finishTurn, 0, 0));
}

/** The other joints: through the delivery and impact poses with the rates of the way between them. */
function follow(
  scene: Scene,
  joints: readonly JointName[],
  poses: { readonly delivery: Pose; readonly impact: Pose; readonly finish: Pose },
  times: { readonly deliveryS: number; readonly impactS: number; readonly finishS: number },
): void {
  for (const joint of joints) {
    const a = angleIn(poses.delivery, joint);
    const b = angleIn(poses.impact, joint);
    const rate = (b - a) / (times.impactS - times.deliveryS);
    pass(scene, joint, times.deliveryS, jet(a, rate, 0));
    pass(scene, joint, times.impactS, jet(b, rate * 0.8, 0));
    pass(scene, joint, times.finishS, jet(angleIn(poses.finish, joint)));
  }
}

/** Third angle at delivery that makes the true axial rotation from the top `keptDeg`. */
function rotationAt(top: Pose, arm: ArmAtDelivery, keptDeg: number): number {
  // The swing's own share, integral(d plane cos elevation), by the mean over the straight path.
  const planeBy = radians(arm.planeDeg - top.planeDeg);
  const elevationBy = radians(arm.elevationDeg - top.elevationDeg);
  const e0 = radians(top.elevationDeg);
  const swing = (planeBy / elevationBy) * (Math.sin(e0 + elevationBy) - Math.sin(e0));
  return top.externalRotationDeg + keptDeg + degrees(swing);
}

interface ArmAtDelivery {
  readonly planeDeg: number;
  readonly elevationDeg: number;
}

function posesOf(scene: Scene, plan: TurnPlan, addedDeg: number, keptDeg: number) {
  const impactLateral = between(scene, 21, 29);
  const deliveryLateral = impactLateral - between(scene, 11, 15);
  const trunk = bendTo(plan.top, plan.deliveryTurn, deliveryLateral, addedDeg);
  const arm = {
    planeDeg: plan.top.planeDeg + between(scene, 12, 22),
    elevationDeg: between(scene, 36, 44),
  };
  const rotation = rotationAt(plan.top, arm, keptDeg);
  const impact: Pose = {
    turnDeg: plan.impactTurn,
    lateralDeg: impactLateral,
    flexionDeg: Math.max(26, Math.min(39, trunk.flexionDeg - between(scene, 2, 5))),
    planeDeg: arm.planeDeg + between(scene, 8, 14),
    elevationDeg: arm.elevationDeg - between(scene, 1, 4),
    externalRotationDeg: rotation - between(scene, 10, 18),
  };
  const finish: Pose = {
    turnDeg: plan.finishTurn,
    lateralDeg: between(scene, 5, 14),
    flexionDeg: between(scene, -4, 8),
    planeDeg: between(scene, 105, 120),
    elevationDeg: between(scene, 75, 95),
    externalRotationDeg: between(scene, 10, 30),
  };
  return { delivery: { ...trunk, ...arm, externalRotationDeg: rotation }, impact, finish };
}

/** Time of the largest turn rate between two times: sampled each 0.2 ms. */
function peakTurnS(scene: Scene, fromS: number, toS: number): number {
  let [best, at] = [-Infinity, fromS];
  for (let t = fromS; t <= toS; t += 2e-4) {
    const { v } = channelAt(scene.score.channels.turn, t);
    if (v > best) [best, at] = [v, t];
  }
  return at;
}

/** A full swing; with a ball it ends in a blow at impact. */
function swing(scene: Scene, peak: readonly [number, number], addedDeg: number, keptDeg: number) {
  getReady(scene);
  const plan = planTurn(scene, peak);
  const topAcc = (12 * (SHARE - 0.5) * plan.peakRate) / plan.deliveryAfterS;
  const takes = scene.golfer.backswingS * between(scene, 0.95, 1.1);
  const { startS, topS } = backswing(scene, plan.top, takes, radians(topAcc));
  const deliveryS = topS + plan.deliveryAfterS;
  const impactS = deliveryS + plan.impactAfterS;
  const finishS = impactS + plan.finishAfterS + between(scene, 0.05, 0.25);
  const poses = posesOf(scene, plan, addedDeg, keptDeg);
  turnThrough(scene, plan, topS);
  follow(scene, [...TRUNK.slice(1), ...ARM], poses, { deliveryS, impactS, finishS });
  scene.nowS = finishS;
  return { startS, topS, impactS, endS: finishS, deliveryS: peakTurnS(scene, topS, impactS) };
}

const measured = (scene: Scene, times: { topS: number; deliveryS: number }) =>
  measuresOf(
    segmentsAt(scene),
    { fromS: times.topS, toS: times.deliveryS, armOnsetS: null, catchS: null },
    scene.addressTurn,
  );

function walkOffFinish(scene: Scene): void {
  wait(scene, between(scene, 0.8, 1.8));
  standUp(scene, between(scene, 0.8, 2.5));
}

export function hitBall(scene: Scene, carryOver: number): void {
  const { golfer } = scene;
  const added = golfer.addedFlexionDeg * carryOver;
  const times = swing(scene, [560, 745], added, golfer.keptRotationDeg * carryOver);
  const shockMs2 = between(scene, 15, 40);
  strike(scene, times.impactS, shockMs2, between(scene, 0.008, 0.014), between(scene, 0.15, 0.35));
  const measures = measured(scene, times);
  scene.repetitions.push({ kind: 'ball', carryOver, shockMs2, measures, ...times });
  walkOffFinish(scene);
}

export function practiceSwing(scene: Scene): void {
  const added = between(scene, 1, 5);
  const swung = swing(scene, [500, 680], added, between(scene, -14, -4));
  const { startS, topS, deliveryS, endS } = swung;
  const measures = measured(scene, swung);
  scene.repetitions.push({ kind: 'practiceSwing', measures, startS, topS, deliveryS, endS });
  walkOffFinish(scene);
}
