import { radians } from '../../math/angle.ts';
import { norm } from '../../math/vec3.ts';
import type { ImuSample } from '../../sensors/sample.ts';

/** Above these a person does not stand still, rad/s: the larger arm limit as for the swing's stillness. */
const LIMIT = { chest: radians(12), trailArm: radians(18), club: Infinity } as const;
/** Smoothing of the rate, s: one shaken sample is no movement. */
const SMOOTH_S = 0.15;

/** Smoothed rates of the worn sensors and since when all of them are still. Plain data. */
export interface StillState {
  readonly rate: Record<'chest' | 'trailArm', number>;
  readonly lastS: Record<'chest' | 'trailArm', number | null>;
  sinceS: number | null;
}

export const newStill = (): StillState => ({
  rate: { chest: 0, trailArm: 0 },
  lastS: { chest: null, trailArm: null },
  sinceS: null,
});

/** Takes one sample; session s since when both sensors are still, `null` where one moves. */
export function stepStill(state: StillState, sample: ImuSample): number | null {
  const { sensor, timeS } = sample;
  if (sensor === 'club') return state.sinceS;
  const dt = Math.min(0.1, Math.max(0, timeS - (state.lastS[sensor] ?? timeS)));
  const rate = norm(sample.gyro);
  state.lastS[sensor] = timeS;
  if (Number.isFinite(rate)) {
    state.rate[sensor] += (rate - state.rate[sensor]) * (1 - Math.exp(-dt / SMOOTH_S));
  }
  const still = state.rate.chest < LIMIT.chest && state.rate.trailArm < LIMIT.trailArm;
  if (!still) state.sinceS = null;
  else state.sinceS ??= timeS;
  return state.sinceS;
}
