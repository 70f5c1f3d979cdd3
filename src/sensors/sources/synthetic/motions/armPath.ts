import { radians } from '../../../../math/angle.ts';
import { jet, lastValue, movementDone } from '../channel.ts';
import { type Scene, between, pass } from '../scene.ts';

/** When the arm moves, and the span over which its axial rotation counts; s. */
export interface ArmTimes {
  readonly onsetS: number;
  readonly endS: number;
  readonly countFromS: number;
  readonly countToS: number;
}

/**
 * Lowers the arm so that its true axial rotation over the counted span is `keptDeg`. With plane and
 * elevation linear in the part done, the rotation that the swing itself brings is
 * integral(d plane cos elevation) in closed form; the third angle makes up the rest.
 */
export function lowerArm(scene: Scene, times: ArmTimes, keptDeg: number): void {
  const { channels } = scene.score;
  const takes = times.endS - times.onsetS;
  const from = movementDone((times.countFromS - times.onsetS) / takes);
  const to = movementDone((times.countToS - times.onsetS) / takes);
  const elevation0 = lastValue(channels.elevation);
  const elevation = radians(between(scene, 38, 50)) - elevation0;
  const plane = radians(between(scene, 6, 18));
  const swing =
    (plane / elevation) *
    (Math.sin(elevation0 + elevation * to) - Math.sin(elevation0 + elevation * from));
  const rotation = (radians(keptDeg) + swing) / (to - from);
  const steps = [
    ['elevation', elevation],
    ['plane', plane],
    ['externalRotation', rotation],
  ] as const;
  for (const [joint, by] of steps) {
    const rest = lastValue(channels[joint]);
    pass(scene, joint, times.onsetS, jet(rest));
    pass(scene, joint, times.endS, jet(rest + by));
  }
}
