import { degrees, radians } from '../../math/angle.ts';
import { type Vec3, ZERO, add, dot, isFiniteVec, norm, normalise, scale } from '../../math/vec3.ts';
import type { ImuSample } from '../../sensors/sample.ts';

/** Counts movements of one sensor about the axis of the first one. Plain data. */
export interface CountState {
  /** Rotation until the axis is known, rad. */
  lead: Vec3;
  axis: Vec3 | null;
  angleDeg: number;
  /** Farthest angle on the present way, deg: outward or back. */
  turnedDeg: number;
  out: boolean;
  count: number;
  lastS: number | null;
}

/** Slower turning is drift of the sensor, not movement, rad/s. */
const MOVING = radians(12);
/** The first movement shows its axis after so much, rad. */
const LEAD = radians(12);

export const newCount = (): CountState => ({
  lead: ZERO,
  axis: null,
  angleDeg: 0,
  turnedDeg: 0,
  out: false,
  count: 0,
  lastS: null,
});

function follow(state: CountState, turn: Vec3): void {
  if (state.axis !== null) {
    state.angleDeg += degrees(dot(turn, state.axis));
    return;
  }
  state.lead = add(state.lead, turn);
  if (norm(state.lead) < LEAD) return;
  state.axis = normalise(state.lead);
  state.angleDeg = degrees(norm(state.lead));
}

/** A way out or back has begun when the angle has come so far from the last turning point: drift cannot do that. */
function countTurns(state: CountState, swingDeg: number): void {
  const { angleDeg, out } = state;
  state.turnedDeg = out ? Math.max(state.turnedDeg, angleDeg) : Math.min(state.turnedDeg, angleDeg);
  if (Math.abs(angleDeg - state.turnedDeg) < swingDeg) return;
  if (out) state.count += 1;
  state.out = !out;
  state.turnedDeg = angleDeg;
}

/**
 * Takes one sample of the sensor that moves; the number of movements there and back so far.
 * @param swingDeg least size of a movement
 */
export function stepCount(state: CountState, { timeS, gyro }: ImuSample, swingDeg: number): number {
  const dt = Math.min(0.1, Math.max(0, timeS - (state.lastS ?? timeS)));
  state.lastS = timeS;
  if (isFiniteVec(gyro) && norm(gyro) > MOVING) follow(state, scale(gyro, dt));
  countTurns(state, swingDeg);
  return state.count;
}
