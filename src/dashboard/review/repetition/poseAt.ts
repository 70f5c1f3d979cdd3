import { slerp } from '../../../math/quat.ts';
import type { CurvePose, QuaternionView } from '../../../streaming/sessionsContract.ts';

interface Pose {
  readonly thorax: QuaternionView;
  readonly humerus: QuaternionView;
}

/** Between poses farther apart than this something was lost, s. */
const LARGEST_STEP_S = 0.25;
/** A pose so soon after is the one of the moment, s. */
const AT_ONCE_S = 0.02;

/** The body at `timeS` (session s), between the poses around it; `null` outside them or in a gap. */
export function poseAt(poses: readonly CurvePose[], timeS: number): Pose | null {
  const next = poses.findIndex((p) => p.timeS >= timeS);
  const after = poses[next];
  if (after === undefined) return null;
  const before = poses[next - 1] ?? after;
  const stepS = after.timeS - before.timeS;
  if (stepS > LARGEST_STEP_S || next === 0) return after.timeS - timeS < AT_ONCE_S ? after : null;
  const share = stepS === 0 ? 0 : (timeS - before.timeS) / stepS;
  return {
    thorax: slerp(before.thorax, after.thorax, share),
    humerus: slerp(before.humerus, after.humerus, share),
  };
}
