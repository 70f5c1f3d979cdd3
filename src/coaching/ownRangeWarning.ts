import type { JointAngles } from '../body/segments.ts';
import type { SafetyWarning } from './judgement.ts';
import type { OwnRange, Plan } from './plan.ts';
import { warningOf } from './warnings.ts';

/** Which excursion is going on; plain data. */
export interface OwnRangeState {
  armOut: boolean;
  trunkOut: boolean;
}

export const startOwnRange = (): OwnRangeState => ({ armOut: false, trunkOut: false });

/** External rotation is warned of this near to one's own end, and only with the arm raised so far, deg. */
const ARM_MARGIN_DEG = 10;
const ARM_RAISED_DEG = 60;
/** The trunk is warned of this far beyond one's own end, deg. */
const TRUNK_BEYOND_DEG = 5;
/** An excursion is over once the angle is back by so much, deg. A choice, over the noise of the angles. */
const BACK_DEG = 5;

/**
 * Takes one instant of the angles; warns when an excursion begins and not again until it is over. Without an own
 * range in the plan it never warns. Instants in a gap should not be fed. Changes `state` in place.
 */
export function ownRangeWarning(
  state: OwnRangeState,
  angles: JointAngles,
  timeS: number,
  plan: Pick<Plan, 'ownRange'>,
): readonly SafetyWarning[] {
  const warnings: SafetyWarning[] = [];
  const arm = armExcess(angles, plan.ownRange);
  if (begins(state.armOut, arm)) warnings.push(warningOf('own-range', timeS));
  const trunk = trunkExcess(angles, plan.ownRange);
  if (begins(state.trunkOut, trunk)) warnings.push(warningOf('trunk-own-range', timeS));
  state.armOut = isOut(state.armOut, arm);
  state.trunkOut = isOut(state.trunkOut, trunk);
  return warnings;
}

/** How far over the limit, deg; `null` where it cannot be told now, which changes nothing. */
type Excess = number | null;

const begins = (out: boolean, excess: Excess): boolean => !out && excess !== null && excess > 0;
const isOut = (out: boolean, excess: Excess): boolean =>
  excess === null ? out : excess > (out ? -BACK_DEG : 0);

function armExcess(a: JointAngles, own: OwnRange): Excess {
  if (own.externalRotationDeg === undefined) return null;
  const raised = finite(a.elevationDeg - ARM_RAISED_DEG);
  if (raised !== null && raised <= -BACK_DEG) return raised;
  if (raised === null || a.externalRotationDeg === null) return null;
  return finite(
    Math.min(raised, a.externalRotationDeg - (own.externalRotationDeg - ARM_MARGIN_DEG)),
  );
}

function trunkExcess(a: JointAngles, own: OwnRange): Excess {
  const beyond = (angleDeg: number, endDeg: number | undefined): number[] =>
    endDeg === undefined || !Number.isFinite(angleDeg)
      ? []
      : [angleDeg - endDeg - TRUNK_BEYOND_DEG];
  const all = [
    ...beyond(a.flexionDeg, own.flexionDeg),
    ...beyond(a.lateralDeg, own.lateralTrailDeg),
    ...beyond(-a.lateralDeg, own.lateralLeadDeg),
  ];
  return all.length === 0 ? null : Math.max(...all);
}

const finite = (v: number): number | null => (Number.isFinite(v) ? v : null);
