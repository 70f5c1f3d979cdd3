import { UPRIGHT } from '../golfer.ts';
import type { Pose } from '../pose.ts';
import { type Scene, between, pose, wait } from '../scene.ts';
import { standUp, takeAddress } from './address.ts';
import { bow, raiseArm, settle } from './calibration.ts';

/** Time to hear what is asked, s. */
const hear = (scene: Scene): void => wait(scene, between(scene, 1.4, 2));

function upright(scene: Scene): void {
  if (scene.atAddress) standUp(scene, 0.2);
  settle(scene, 0.8);
}

/** Slowly out to an end, stays there for a moment, and back. */
function outAndBack(scene: Scene, ...ends: readonly Partial<Pose>[]): void {
  upright(scene);
  for (const end of ends) {
    const takes = between(scene, 1.2, 1.7);
    pose(scene, { ...UPRIGHT, ...end }, scene.nowS, scene.nowS + takes);
    wait(scene, takes + between(scene, 0.7, 1));
  }
  const takes = between(scene, 1.2, 1.7);
  pose(scene, UPRIGHT, scene.nowS, scene.nowS + takes);
  wait(scene, takes);
}

/** Arm out to the side at shoulder height. */
const ABDUCTED = { planeDeg: 12, elevationDeg: 86 };

const MOVEMENTS: Readonly<Record<string, (scene: Scene) => void>> = {
  stand: upright,
  standAgain: upright,
  bow: (scene) => bow(scene, 3),
  armRaise: (scene) => raiseArm(scene, 3),
  recheckStand: upright,
  recheckBow: (scene) => bow(scene, 1),
  recheckArmRaise: (scene) => raiseArm(scene, 1),
  address: (scene) => takeAddress(scene, 0.5),
  rangeRotation: (scene) =>
    outAndBack(
      scene,
      { ...ABDUCTED, externalRotationDeg: 15 },
      { ...ABDUCTED, externalRotationDeg: between(scene, 92, 104) },
      { ...ABDUCTED, externalRotationDeg: 15 },
    ),
  rangeBend: (scene) => outAndBack(scene, { flexionDeg: between(scene, 60, 75) }),
  rangeTrailSide: (scene) => outAndBack(scene, { lateralDeg: between(scene, 24, 32) }),
  rangeLeadSide: (scene) => outAndBack(scene, { lateralDeg: -between(scene, 24, 32) }),
  rest: (scene) => standUp(scene, 0.5),
};

/** Hears and does what was asked; stays as it is where the word means nothing to a body. */
export function doAsked(scene: Scene, what: string): void {
  const movement = MOVEMENTS[what];
  if (movement === undefined) return;
  hear(scene);
  movement(scene);
}
