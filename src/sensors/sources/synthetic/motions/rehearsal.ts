import { radians } from '../../../../math/angle.ts';
import { jet, lastValue, movementDone } from '../channel.ts';
import { measuresOf } from '../measures.ts';
import { TRUNK, type TrunkPose } from '../pose.ts';
import { type Scene, between, chance, move, pass, segmentsAt, wait } from '../scene.ts';
import type { RehearsalFault } from '../script.ts';
import { getReady, recover } from './address.ts';
import { lowerArm } from './armPath.ts';
import { backswing } from './backswing.ts';
import { type RehearsalPlan, planRehearsal } from './rehearsalPlan.ts';
import { lighten, strike } from './strike.ts';

/** Where a catch is not found, measures are taken this long after the chest's start. */
const ASSUMED_CATCH_S = 0.4;
/** Later than this the club lies on the floor. */
const LANDED_S = 0.55;

interface Times {
  readonly chestOnsetS: number;
  readonly armOnsetS: number;
  /** Measures are taken here: the catch, or where it would have been. */
  readonly countToS: number;
  readonly catchS: number | null;
}

/** The trunk passes `atCatch` at `countToS` and comes to rest a little later. */
function turnDown(scene: Scene, atCatch: TrunkPose, times: Times): number {
  const endS = times.countToS + between(scene, 0, 0.05);
  for (const joint of TRUNK) {
    const rest = lastValue(scene.score.channels[joint]);
    const onsetS = times.chestOnsetS + (joint === 'turn' ? 0 : between(scene, 0, 0.012));
    const done = movementDone((times.countToS - onsetS) / (endS - onsetS));
    const goal = rest + (radians(atCatch[`${joint}Deg`]) - rest) / done;
    pass(scene, joint, onsetS, jet(rest));
    pass(scene, joint, endS, jet(goal));
    const settled = endS + between(scene, 0.3, 0.45);
    move(scene, joint, goal - (goal - rest) * between(scene, 0.01, 0.03), endS, settled);
  }
  return endS;
}

/** A settling of the arms after they arrive, too slow to count as movement. */
function settleAtTop(scene: Scene, topS: number): void {
  const rest = lastValue(scene.score.channels.elevation);
  move(scene, 'elevation', rest - radians(between(scene, 0.2, 0.9)), topS, topS + 0.4);
}

function timesOf(scene: Scene, plan: RehearsalPlan, topS: number, missed: boolean): Times {
  const released = topS + plan.holdS;
  const chestOnsetS = released + Math.max(0, -plan.chestLeadS);
  const fallS = missed ? ASSUMED_CATCH_S : between(scene, 0.3, 0.42);
  return {
    chestOnsetS,
    armOnsetS: chestOnsetS + plan.chestLeadS,
    countToS: chestOnsetS + fallS,
    catchS: missed ? null : chestOnsetS + fallS,
  };
}

/** After a missed catch some pick the club up again: a grab long after it has landed. */
function lateGrab(scene: Scene, chestOnsetS: number): void {
  const timeS = chestOnsetS + LANDED_S + between(scene, 0.15, 0.5);
  strike(scene, timeS, between(scene, 0.8, 2), between(scene, 0.018, 0.026), 0.15);
}

/** Trunk down and round, arm after it; returns when both are at rest. */
function letGo(scene: Scene, plan: RehearsalPlan, times: Times): number {
  const trunkEndS = turnDown(scene, plan.atCatch, times);
  const armEndS = times.countToS + between(scene, 0.05, 0.18);
  lowerArm(
    scene,
    {
      onsetS: times.armOnsetS,
      endS: armEndS,
      countFromS: times.chestOnsetS,
      countToS: times.countToS,
    },
    plan.keptRotationDeg,
  );
  lighten(scene, Math.min(times.chestOnsetS, times.armOnsetS));
  return Math.max(trunkEndS, armEndS) + 0.45;
}

/** The blow of the catch, m/s^2 at the arm; `null` without one. */
function catchClub(scene: Scene, times: Times): number | null {
  if (times.catchS === null) {
    if (chance(scene, 0.3)) lateGrab(scene, times.chestOnsetS);
    return null;
  }
  const shockMs2 = between(scene, 1.5, 6);
  const scaleS = between(scene, 0.008, 0.015);
  strike(scene, times.catchS, shockMs2, scaleS, between(scene, 0.1, 0.25));
  return shockMs2;
}

export function rehearse(scene: Scene, fault: RehearsalFault | null): void {
  getReady(scene);
  const plan = planRehearsal(scene, fault);
  const takes = scene.golfer.backswingS * between(scene, 1, 1.35);
  const { startS, topS } = backswing(scene, plan.top, takes);
  settleAtTop(scene, topS);
  const { countToS, ...times } = timesOf(scene, plan, topS, fault === 'missed-catch');
  const endS = letGo(scene, plan, { ...times, countToS });
  const shockMs2 = catchClub(scene, { ...times, countToS });
  const clubReleaseS = Math.min(times.chestOnsetS, times.armOnsetS);
  scene.score.falls.push({
    fromS: clubReleaseS,
    toS: times.catchS ?? clubReleaseS + LANDED_S + 0.02,
    liesUntilS: times.catchS === null ? endS : null,
  });
  const measures = measuresOf(
    segmentsAt(scene),
    {
      fromS: times.chestOnsetS,
      toS: countToS,
      armOnsetS: times.armOnsetS,
      catchS: times.catchS,
    },
    scene.addressTurn,
  );
  scene.repetitions.push({
    kind: 'rehearsal',
    fault,
    startS,
    topS,
    endS,
    holdS: clubReleaseS - topS,
    clubReleaseS,
    ...times,
    shockMs2,
    measures,
  });
  scene.nowS = endS;
  wait(scene, between(scene, 0.5, 1.1));
  recover(scene);
}
