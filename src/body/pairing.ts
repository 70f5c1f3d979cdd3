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
  waiting: Orientation[];
  armBefore: Orientation | null;
  arm: Orientation | null;
}

/** How long (s of session time) the chest waits for the arm before the arm counts as gone. */
export const ARM_WAIT_S = 1;

export const createPairing = (): PairingState => ({ waiting: [], armBefore: null, arm: null });

/** Takes one arm orientation and gives every chest orientation up to it its partner. */
export function pairArm(
  state: PairingState,
  arm: Orientation,
  emit: (pair: SensorPair) => void,
): void {
  state.armBefore = state.arm;
  state.arm = arm;
  let taken = 0;
  for (const chest of state.waiting) {
    if (chest.timeS > arm.timeS) break;
    taken++;
    emitBetween(state.armBefore, arm, chest, emit);
  }
  if (taken > 0) state.waiting.splice(0, taken);
}

/** Takes one chest orientation; it waits for the arm to catch up. */
export function pairChest(
  state: PairingState,
  chest: Orientation,
  emit: (pair: SensorPair) => void,
): void {
  state.waiting.push(chest);
  while (state.waiting.length > 0 && chest.timeS - (state.waiting[0]?.timeS ?? 0) > ARM_WAIT_S) {
    const late = state.waiting.shift();
    if (late && state.arm) emit(together(late, state.arm, state.arm, 0, true));
  }
}

/** What still waits when the recording ends has no partner. */
export function flushPairing(state: PairingState, emit: (pair: SensorPair) => void): void {
  for (const chest of state.waiting) {
    if (state.arm) emit(together(chest, state.arm, state.arm, 0, true));
  }
  state.waiting = [];
}

function emitBetween(
  before: Orientation | null,
  arm: Orientation,
  chest: Orientation,
  emit: (pair: SensorPair) => void,
): void {
  if (before === null) return; // the chest began first: no partner to be had
  const span = arm.timeS - before.timeS;
  const t = span > 0 ? (chest.timeS - before.timeS) / span : 1;
  const gap = arm.afterGap || chest.afterGap;
  emit(together(chest, before, arm, Math.max(0, t), gap));
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
