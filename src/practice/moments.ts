import type { BodyFrame } from '../body/segments.ts';
import type { JudgedRepetition } from '../coaching/judgement.ts';
import { type PoseView, drawnPose } from './pose.ts';

/** The body at three moments of a repetition. */
export interface RepetitionMoments {
  readonly index: number;
  readonly address: PoseView | null;
  readonly top: PoseView | null;
  /** At the catch; for a ball at delivery. */
  readonly end: PoseView | null;
}

interface Kept {
  readonly timeS: number;
  readonly pose: PoseView;
}

/** The last seconds' poses. Written in place. */
export interface RecentPoses {
  readonly kept: Kept[];
}

/** Longer than any repetition with its hold, s. */
const KEEP_S = 40;
const EACH_S = 0.017;

export const newRecentPoses = (): RecentPoses => ({ kept: [] });

export function keepPose({ kept }: RecentPoses, frame: BodyFrame): void {
  const last = kept.at(-1);
  if (last !== undefined && frame.timeS - last.timeS < EACH_S) return;
  kept.push({ timeS: frame.timeS, pose: drawnPose(frame) });
  const oldest = kept[0]?.timeS ?? frame.timeS;
  if (frame.timeS - oldest < 2 * KEEP_S) return;
  kept.splice(
    0,
    kept.findIndex((k) => frame.timeS - k.timeS <= KEEP_S),
  );
}

/** The pose nearest to `timeS`; `null` where none is within a tenth of a second. */
function poseAt({ kept }: RecentPoses, timeS: number): PoseView | null {
  const after = kept.findIndex((k) => k.timeS >= timeS);
  const near = [kept[after < 0 ? kept.length - 1 : after], kept[after - 1]]
    .filter((k) => k !== undefined)
    .sort((a, b) => Math.abs(a.timeS - timeS) - Math.abs(b.timeS - timeS))[0];
  return near !== undefined && Math.abs(near.timeS - timeS) < 0.1 ? near.pose : null;
}

const endOf = (r: JudgedRepetition): number | null =>
  r.kind === 'rehearsal' ? r.catchS : r.deliveryS;

export const momentsOf = (recent: RecentPoses, r: JudgedRepetition): RepetitionMoments => {
  const endS = endOf(r);
  return {
    index: r.index,
    address: poseAt(recent, r.startS),
    top: poseAt(recent, r.kind === 'rehearsal' ? r.releaseS : r.topS),
    end: endS === null ? null : poseAt(recent, endS),
  };
};
