import type { JointAngles } from '../../body/segments.ts';
import type { OwnRange } from '../../coaching/plan.ts';

/** Ends of one's comfortable range, each the largest angle that was held for `HELD_S`. */
export type RangeKey = keyof OwnRange;

const HELD_S = 0.3;
/** The arm counts as at shoulder height in this band of elevation, deg. */
const SHOULDER_HEIGHT = [60, 120] as const;

/** Newest angles and the ends so far. Plain data. */
export interface RangeState {
  readonly recent: { readonly timeS: number; readonly deg: number }[];
  bestDeg: number | null;
}

export const newRange = (): RangeState => ({ recent: [], bestDeg: null });

/** The angle that a range end is made of; `null` where it says nothing now. */
export function rangeAngle(key: RangeKey, angles: JointAngles): number | null {
  switch (key) {
    case 'flexionDeg':
      return angles.flexionDeg;
    case 'lateralTrailDeg':
      return angles.lateralDeg;
    case 'lateralLeadDeg':
      return -angles.lateralDeg;
    case 'externalRotationDeg': {
      const [low, high] = SHOULDER_HEIGHT;
      const raised = angles.elevationDeg >= low && angles.elevationDeg <= high;
      return raised ? angles.externalRotationDeg : null;
    }
  }
}

/** Takes one instant; the end so far, deg. */
export function stepRange(state: RangeState, timeS: number, deg: number | null): number | null {
  const { recent } = state;
  if (deg === null || !Number.isFinite(deg)) {
    recent.length = 0;
    return state.bestDeg;
  }
  recent.push({ timeS, deg });
  while (recent.length > 1 && timeS - (recent[1]?.timeS ?? timeS) >= HELD_S) recent.shift();
  if (timeS - (recent[0]?.timeS ?? timeS) >= HELD_S) {
    const held = Math.min(...recent.map((r) => r.deg));
    state.bestDeg = Math.max(state.bestDeg ?? -Infinity, held);
  }
  return state.bestDeg;
}
