import { UPRIGHT, near } from '../golfer.ts';
import { radians } from '../../../../math/angle.ts';
import { lastValue } from '../channel.ts';
import { ARM } from '../pose.ts';
import { type Scene, between, chance, move, pose, wait } from '../scene.ts';

/** Stands up with hanging arms and waits. */
export function standUp(scene: Scene, pauseS: number): void {
  const takes = between(scene, 1.1, 1.7);
  pose(scene, near(scene.random, UPRIGHT, 1.5), scene.nowS, scene.nowS + takes);
  wait(scene, takes + pauseS);
  scene.atAddress = false;
}

/** Takes the address posture, each time a little different, and keeps still. */
export function takeAddress(scene: Scene, stillS: number): void {
  const takes = between(scene, 1.2, 1.8);
  const target = near(scene.random, scene.golfer.address, scene.golfer.addressSpreadDeg);
  pose(scene, target, scene.nowS, scene.nowS + takes);
  wait(scene, takes);
  scene.atAddress = true;
  wait(scene, stillS);
}

/** Small swings of the club over the ball: the arm more than the trunk. */
export function waggle(scene: Scene, times: number): void {
  for (let i = 0; i < times; i++) {
    const takes = between(scene, 0.35, 0.6);
    const size = between(scene, 4, 10);
    const turn = lastValue(scene.score.channels.turn);
    const back = ARM.map((joint) => lastValue(scene.score.channels[joint]));
    const middle = scene.nowS + takes;
    const end = middle + takes;
    move(scene, 'turn', turn - radians(size * 0.4), scene.nowS, middle);
    move(scene, 'turn', turn, middle, end);
    ARM.forEach((joint, k) => {
      const rest = back[k] ?? 0;
      const share = joint === 'elevation' ? 0.6 : joint === 'plane' ? -0.8 : 0.5;
      move(scene, joint, rest + radians(size * share), scene.nowS, middle);
      move(scene, joint, rest, middle, end);
    });
    wait(scene, 2 * takes + between(scene, 0.05, 0.2));
  }
}

/** Over the ball and still, ready to swing: from wherever the last movement ended. */
export function getReady(scene: Scene): void {
  if (!scene.atAddress) {
    takeAddress(scene, between(scene, 0.3, 0.7));
    if (chance(scene, 0.4)) waggle(scene, chance(scene, 0.5) ? 1 : 2);
  }
  wait(scene, between(scene, 0.9, 1.8));
}

/** After a repetition: back over the ball at once, or up for a breath. */
export function recover(scene: Scene): void {
  if (chance(scene, 0.5)) takeAddress(scene, between(scene, 0.3, 0.8));
  else standUp(scene, between(scene, 0.8, 2.2));
}
