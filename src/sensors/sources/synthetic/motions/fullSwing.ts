import { radians } from '../../../../math/angle.ts';
import { type Jet, movedAt, jet, lastValue } from '../channel.ts';
import { measuresOf } from '../measures.ts';
import { type Scene, between, pass, segmentsAt, wait } from '../scene.ts';
import { getReady, standUp } from './address.ts';
import { backswing } from './backswing.ts';
import { strike } from './strike.ts';
import { smoothThrough } from '../viaPoints.ts';
import { SHARE, type SwingPoses, type TurnPlan, planPoses, planTurn } from './swingPlan.ts';

/** s */
interface SwingTimes {
  readonly topS: number;
  readonly deliveryS: number;
  readonly impactS: number;
  readonly finishS: number;
}

function turnThrough(scene: Scene, plan: TurnPlan, times: SwingTimes): void {
  const at = (x: number, v: number, a: number): Jet => jet(radians(x), radians(v), radians(a));
  const slowing = (-1.2 * plan.impactRate) / plan.finishAfterS;
  pass(scene, 'turn', times.deliveryS, at(plan.deliveryTurn, plan.peakRate, 0));
  pass(scene, 'turn', times.impactS, at(plan.impactTurn, plan.impactRate, slowing));
  pass(scene, 'turn', times.impactS + plan.finishAfterS, at(plan.finishTurn, 0, 0));
}

/** A joint passes delivery and impact on the smoothest way to its finish. */
function through(
  scene: Scene,
  joint: 'lateral' | 'flexion' | 'plane' | 'elevation' | 'externalRotation',
  times: SwingTimes,
  [delivery, impact, finish]: readonly [number, number, number],
): void {
  const { topS, deliveryS, impactS, finishS } = times;
  const top = { timeS: topS, ...jet(lastValue(scene.score.channels[joint])) };
  const via = [
    { timeS: deliveryS, x: delivery },
    { timeS: impactS, x: impact },
  ];
  for (const knot of smoothThrough(top, via, { timeS: finishS, ...jet(finish) })) {
    pass(scene, joint, knot.timeS, jet(knot.x, knot.v, knot.a));
  }
  pass(scene, joint, finishS, jet(finish));
}

const WITHOUT_THIRD = ['lateral', 'flexion', 'plane', 'elevation'] as const;

function followTurn(scene: Scene, poses: SwingPoses, times: SwingTimes): void {
  for (const joint of WITHOUT_THIRD) {
    const name = `${joint}Deg` as const;
    through(scene, joint, times, [
      radians(poses.delivery[name]),
      radians(poses.impact[name]),
      radians(poses.finish[name]),
    ]);
  }
}

/** Axial rotation that the bone's swing itself brings, integral(d plane cos elevation), rad. */
function swingShare(scene: Scene, fromS: number, toS: number): number {
  const { plane, elevation } = scene.score.channels;
  const n = 400;
  const h = (toS - fromS) / n;
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const t = fromS + (i + 0.5) * h;
    sum += movedAt(plane, t).v * Math.cos(movedAt(elevation, t).x) * h;
  }
  return sum;
}

/** The third angle keeps `kept` rad of true axial rotation to the delivery, and then lets go. */
function rotateArm(scene: Scene, times: SwingTimes, kept: number): void {
  const rest = lastValue(scene.score.channels.externalRotation);
  const delivery = rest + kept + swingShare(scene, times.topS, times.deliveryS);
  const impact = delivery - radians(between(scene, 10, 18));
  const finish = radians(between(scene, 10, 30));
  through(scene, 'externalRotation', times, [delivery, impact, finish]);
}

/** Time at which something of the turn's jet is largest: sampled each 0.2 ms. */
function largestS(scene: Scene, fromS: number, toS: number, of: (turn: Jet) => number): number {
  let [best, at] = [-Infinity, fromS];
  for (let t = fromS; t <= toS; t += 2e-4) {
    const value = of(movedAt(scene.score.channels.turn, t));
    if (value > best) [best, at] = [value, t];
  }
  return at;
}

interface Asked {
  /** Band of the chest's peak turn rate, deg/s. */
  readonly peak: readonly [number, number];
  readonly addedFlexionDeg: number;
  readonly keptRotationDeg: number;
}

/** Address, backswing and a full swing; returns its times and measures. */
function swing(scene: Scene, asked: Asked) {
  getReady(scene);
  const plan = planTurn(scene, asked.peak);
  const topAcc = (12 * (SHARE - 0.5) * plan.peakRate) / plan.deliveryAfterS;
  const takes = scene.golfer.backswingS * between(scene, 0.95, 1.1);
  const { startS, topS } = backswing(scene, plan.top, takes, radians(topAcc));
  const plannedS = topS + plan.deliveryAfterS;
  const impactS = plannedS + plan.impactAfterS;
  const finishS = impactS + plan.finishAfterS + between(scene, 0.05, 0.25);
  const times = { topS, deliveryS: plannedS, impactS, finishS };
  turnThrough(scene, plan, times);
  followTurn(scene, planPoses(scene, plan, asked.addedFlexionDeg), times);
  rotateArm(scene, times, radians(asked.keptRotationDeg));
  scene.nowS = finishS;
  const reversalS = largestS(scene, topS - 0.03, topS + 0.03, (turn) => -turn.x);
  const deliveryS = largestS(scene, topS, impactS, (turn) => turn.v);
  const span = { fromS: reversalS, toS: deliveryS, armOnsetS: null, catchS: null };
  const measures = measuresOf(segmentsAt(scene), span, scene.addressTurn);
  return { swung: { startS, topS: reversalS, deliveryS, endS: finishS, measures }, impactS };
}

function walkOffFinish(scene: Scene): void {
  wait(scene, between(scene, 0.8, 1.8));
  standUp(scene, between(scene, 0.8, 2.5));
}

export function hitBall(scene: Scene, carryOver: number): void {
  const { golfer } = scene;
  const { swung, impactS } = swing(scene, {
    peak: [560, 745],
    addedFlexionDeg: golfer.addedFlexionDeg * carryOver,
    keptRotationDeg: golfer.keptRotationDeg * carryOver,
  });
  const shockMs2 = between(scene, 25, 60);
  strike(scene, impactS, shockMs2, between(scene, 0.01, 0.014), between(scene, 0.15, 0.35));
  scene.repetitions.push({ kind: 'ball', carryOver, impactS, shockMs2, ...swung });
  walkOffFinish(scene);
}

export function practiceSwing(scene: Scene): void {
  const { swung } = swing(scene, {
    peak: [500, 680],
    addedFlexionDeg: between(scene, 1, 5),
    keptRotationDeg: between(scene, -14, -4),
  });
  scene.repetitions.push({ kind: 'practiceSwing', ...swung });
  walkOffFinish(scene);
}
