import { norm, type Vec3 } from '../math/vec3.ts';

/** How much a sensor is being moved, to tell by a tap or a shake which one is in the hand. Plain data. */
export interface ShakeState {
  /** Movement now, m/s^2 from rest; falls by half in `HALF_S`. */
  level: number;
  timeS: number | null;
  /** Slow mean of the norm: what rest reads on this sensor. */
  restNorm: number | null;
}

const HALF_S = 0.4;
const REST_S = 2;
/** Choices: a tap with a finger reads 10 m/s^2 and more, a sensor lying on a table under 0.5. */
const MOVED = 4;
/** The one that is meant moves so many times more than any other. */
const CLEARLY = 2.5;

export const createShake = (): ShakeState => ({ level: 0, timeS: null, restNorm: null });

/** Takes one reading in, in place. Readings that are not finite are ignored. */
export function stepShake(state: ShakeState, timeS: number, acc: Vec3): void {
  const n = norm(acc);
  if (!Number.isFinite(n) || !Number.isFinite(timeS)) return;
  const dt = state.timeS === null ? 0 : Math.max(0, timeS - state.timeS);
  const rest = state.restNorm ?? n;
  state.timeS = timeS;
  state.restNorm = rest + (n - rest) * (dt / (dt + REST_S));
  state.level = Math.max(state.level * 0.5 ** (dt / HALF_S), Math.abs(n - rest));
}

/** The one sensor that is clearly being moved; `null` where none is, or more than one. */
export function mostShaken<Id>(levels: ReadonlyMap<Id, number>): Id | null {
  const sorted = [...levels].sort((a, b) => b[1] - a[1]);
  const [first, second] = sorted;
  if (!first || first[1] < MOVED) return null;
  return first[1] >= CLEARLY * (second?.[1] ?? 0) ? first[0] : null;
}
