import type { BodyFrame } from '../body/segments.ts';
import { type Quat, quat } from '../math/quat.ts';

/** Both segments at one instant, right-handed equivalent, global frame (X ahead, Y up, Z right). */
export interface PoseView {
  readonly thorax: Quat;
  readonly humerus: Quat;
}

const round4 = (value: number): number => Math.round(value * 1e4) / 1e4;

/** Four digits: 0.01 deg. For drawing only. */
const drawn = (q: Quat): Quat => quat(round4(q.w), round4(q.x), round4(q.y), round4(q.z));

export const drawnPose = ({ thorax, humerus }: BodyFrame): PoseView => ({
  thorax: drawn(thorax),
  humerus: drawn(humerus),
});
