import { jet, lastValue } from '../channel.ts';
import { ARM, type Pose, TRUNK, angleIn } from '../pose.ts';
import { type Scene, between, move, pass } from '../scene.ts';

/** From the address to the top; the arms leave first or together. Returns start and top, s. */
export function backswing(
  scene: Scene,
  top: Pose,
  durationS: number,
  turnAccAtTop = 0,
): { readonly startS: number; readonly topS: number } {
  const startS = scene.nowS;
  const topS = startS + durationS;
  const lag = between(scene, 0, 0.05);
  for (const joint of ARM) move(scene, joint, angleIn(top, joint), startS, topS);
  for (const joint of TRUNK) {
    const channel = scene.score.channels[joint];
    pass(scene, joint, startS + lag, jet(lastValue(channel)));
    pass(scene, joint, topS, jet(angleIn(top, joint), 0, joint === 'turn' ? turnAccAtTop : 0));
  }
  scene.nowS = topS;
  return { startS, topS };
}
