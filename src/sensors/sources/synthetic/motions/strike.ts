import { gaussian } from '../../../../math/random.ts';
import { rotate } from '../../../../math/quat.ts';
import { type Vec3, UNIT_Y, add, normalise, scale, vec3 } from '../../../../math/vec3.ts';
import { figureAt } from '../figure.ts';
import { type Scene, between } from '../scene.ts';

/** A direction within some 40 deg of the given one. */
function around(scene: Scene, direction: Vec3): Vec3 {
  const off = vec3(gaussian(scene.random), gaussian(scene.random), gaussian(scene.random));
  return normalise(add(direction, scale(off, 0.35))) ?? direction;
}

/**
 * A blow through the hands, mostly along the upper arm, and its faint echo at the breastbone.
 * A quarter of what the arm's sensor feels comes from a twitch about the shoulder.
 */
export function strike(
  scene: Scene,
  timeS: number,
  armMs2: number,
  scaleS: number,
  chestShare: number,
): void {
  const { humerus } = figureAt(scene.golfer.build, scene.score, timeS);
  const along = rotate(humerus.q, scale(UNIT_Y, -1));
  const lever = -scene.golfer.build.armSensor.y;
  scene.score.shocks.push({
    timeS,
    scaleS,
    arm: scale(around(scene, along), 0.75 * armMs2),
    armSwing: (0.25 * armMs2) / lever,
    chest: scale(around(scene, scale(UNIT_Y, -1)), armMs2 * chestShare),
  });
}

/** The club's weight leaves the hand: a soft nudge, no blow. */
export const lighten = (scene: Scene, timeS: number): void =>
  strike(scene, timeS, -between(scene, 0.15, 0.5), between(scene, 0.03, 0.045), 0.1);
