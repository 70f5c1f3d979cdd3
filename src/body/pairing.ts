import { type Quat, slerp } from '../math/quat.ts';
import { type Vec3, lerp } from '../math/vec3.ts';
import type { Orientation } from '../orientation/orientation.ts';

/** Both sensors at one instant of the chest sensor's clock; earth frame, headings not yet agreed. */
export interface SensorPair {
  readonly timeS: number;
  readonly chest: Orientation;
  /** Interpolated to `timeS`. */
  readonly arm: {
    readonly q: Quat;
    /** rad/s, sensor frame. */
    readonly gyro: Vec3;
  };
  /** Either sensor had no trustworthy data here. */
  readonly gap: boolean;
  readonly saturated: boolean;
}

/** Plain data. */
export interface PairingState {
  /** Chest orientations that the arm has not passed yet, oldest first. */
  waiting: Orientation[];
  /** The arm's, from the last one before the next chest orientation on. */
  arms: Orientation[];
}

/** How long (s of session time) the chest waits for the arm before the arm counts as gone. */
export const ARM_WAIT_S = 1;

/** How much of an arm that runs ahead is kept for a chest that comes late, s. */
const ARM_AHEAD_S = 2 * ARM_WAIT_S;

export const createPairing = (): PairingState => ({ waiting: [], arms: [] });

/** Takes one arm orientation and gives every chest orientation up to it its partner. */
export function pairArm(
  state: PairingState,
  arm: Orientation,
  emit: (pair: SensorPair) => void,
): void {
  const { arms } = state;
  arms.push(arm);
  pairWaiting(state, emit);
  while (arms.length > 2 && arm.timeS - (arms[1] as Orientation).timeS > ARM_AHEAD_S) arms.shift();
}

/** Takes one chest orientation; it waits for the arm to catch up where it is not ahead already. */
export function pairChest(
  state: PairingState,
  chest: Orientation,
  emit: (pair: SensorPair) => void,
): void {
  state.waiting.push(chest);
  pairWaiting(state, emit);
  while (state.waiting.length > 0 && chest.timeS - (state.waiting[0]?.timeS ?? 0) > ARM_WAIT_S) {
    const late = state.waiting.shift();
    if (late) emitAlone(state, late, emit);
  }
}

/** What still waits when the recording ends has no partner. */
export function flushPairing(state: PairingState, emit: (pair: SensorPair) => void): void {
  for (const chest of state.waiting) emitAlone(state, chest, emit);
  state.waiting = [];
}

function emitAlone(
  state: PairingState,
  chest: Orientation,
  emit: (pair: SensorPair) => void,
): void {
  const arm = state.arms.at(-1);
  if (arm) emit(together(chest, arm, arm, 0, true));
}

/** Pairs every waiting chest orientation that lies between two of the arm's, whichever came first. */
function pairWaiting({ waiting, arms }: PairingState, emit: (pair: SensorPair) => void): void {
  let taken = 0;
  for (const chest of waiting) {
    if (chest.timeS > (arms.at(-1)?.timeS ?? -Infinity)) break;
    taken++;
    while (arms.length > 1 && (arms[1] as Orientation).timeS < chest.timeS) arms.shift();
    emitBetween(arms, chest, emit);
  }
  if (taken > 0) waiting.splice(0, taken);
}

function emitBetween(
  [before, arm]: readonly Orientation[],
  chest: Orientation,
  emit: (pair: SensorPair) => void,
): void {
  // the chest began first: no partner to be had
  if (before === undefined || arm === undefined || chest.timeS < before.timeS) return;
  const span = arm.timeS - before.timeS;
  const t = span > 0 ? (chest.timeS - before.timeS) / span : 1;
  emit(together(chest, before, arm, t, arm.afterGap || chest.afterGap));
}

const together = (
  chest: Orientation,
  before: Orientation,
  after: Orientation,
  t: number,
  gap: boolean,
): SensorPair => ({
  timeS: chest.timeS,
  chest,
  arm: {
    q: slerp(before.q, after.q, t),
    gyro: lerp(before.gyro, after.gyro, t),
  },
  gap,
  saturated: chest.saturated || before.saturated || after.saturated,
});
