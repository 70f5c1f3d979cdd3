import type { JointAngles } from '../body/segments.ts';
import type { SafetyWarning } from './judgement.ts';
import { type OwnRangeState, ownRangeWarning, startOwnRange } from './ownRangeWarning.ts';
import type { OwnRange, Plan } from './plan.ts';

/**
 * A full swing goes beyond an end that was measured slowly, and comes back by itself; how far is usual is not published.
 * Without a hold it is warned of only this far beyond what a rehearsal is, deg. A choice, over the swing of a person who
 * turns and bends at the edge of the bands that are simulated.
 */
const SWING_BEYOND_DEG = 25;

/** The own range over one movement after another; plain data. */
export interface RangeWatch {
  readonly near: OwnRangeState;
  readonly far: OwnRangeState;
  /** The present movement has been held at the top: it is a rehearsal or a hold. */
  held: boolean;
  /** Excursions of the present movement from before its hold. */
  waiting: SafetyWarning[];
}

export const startRangeWatch = (): RangeWatch => ({
  near: startOwnRange(),
  far: startOwnRange(),
  held: false,
  waiting: [],
});

const widened = (own: OwnRange): OwnRange =>
  Object.fromEntries(Object.entries(own).map(([end, deg]) => [end, deg + SWING_BEYOND_DEG]));

/** Where the movement is: before it, on the way, still at the top. */
export type Stage = 'before' | 'moving' | 'hold';

/**
 * Takes one instant; warns in a hold and in what follows it as `ownRangeWarning` does, else only far beyond. An
 * excursion on the way to a hold is warned of once it is held. Changes `watch` in place.
 */
export function watchOwnRange(
  watch: RangeWatch,
  stage: Stage,
  angles: JointAngles,
  timeS: number,
  plan: Pick<Plan, 'ownRange'>,
): readonly SafetyWarning[] {
  if (stage === 'before') Object.assign(watch, { held: false, waiting: [] });
  if (stage === 'hold') watch.held = true;
  const near = ownRangeWarning(watch.near, angles, timeS, plan);
  const far = ownRangeWarning(watch.far, angles, timeS, { ownRange: widened(plan.ownRange) });
  watch.waiting.push(...near);
  if (watch.held) return watch.waiting.splice(0);
  watch.waiting = watch.waiting.filter(({ id }) => far.every((w) => w.id !== id));
  return far.map((w) => ({ ...w, swingsOnly: true }));
}

/** So many of one session are kept, and of each kind the first at least: nobody reads more. A choice. */
const MOST_KEPT = 1000;

/**
 * Adds one to all warnings, in place: what concerns the own range stands once, with how often it came and when last.
 * @returns the warning as it stands
 */
export function addWarning(all: SafetyWarning[], warning: SafetyWarning): SafetyWarning {
  const isSame = ({ id }: SafetyWarning): boolean => id === warning.id;
  const at = COUNTED.includes(warning.id) ? all.findIndex(isSame) : -1;
  const before = all[at];
  if (before === undefined) {
    if (all.length < MOST_KEPT || !all.some(isSame)) all.push(warning);
    return warning;
  }
  const { swingsOnly, ...rest } = before;
  const stands: SafetyWarning = {
    ...rest,
    times: (before.times ?? 1) + 1,
    lastS: warning.atS,
    ...(swingsOnly === true && warning.swingsOnly === true && { swingsOnly }),
  };
  all[at] = stands;
  return stands;
}

const COUNTED: readonly SafetyWarning['id'][] = ['own-range', 'trunk-own-range'];
