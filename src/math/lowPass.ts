import type { Vec3 } from './vec3.ts';

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

/** A vector that is changed in place: for state that lives as long as a recording. */
export type MutableVec3 = Mutable<Vec3>;

/**
 * Second-order Butterworth low-pass of a vector: `y'' + (2/tau) y' + (2/tau^2) y = (2/tau^2) x`,
 * corner `sqrt(2) / (2 pi tau)`. The state is the value and its rate of change, so it means the
 * same at any sample period. The first `tau` seconds are the plain mean of what came.
 */
export interface LowPass3 {
  readonly value: MutableVec3;
  /** Unit of the value per s. */
  readonly rate: MutableVec3;
  /** Time that the mean covers so far, s; below 0 before the first sample. */
  averagedS: number;
}

/** How value and rate move in one period toward an input that stands still: exact for any period. */
export interface LowPassCoefficients {
  readonly tauS: number;
  readonly periodS: number;
  readonly valueFromValue: number;
  readonly valueFromRate: number;
  readonly rateFromValue: number;
  readonly rateFromRate: number;
}

export const zeroVec = (): MutableVec3 => ({ x: 0, y: 0, z: 0 });

export const createLowPass3 = (): LowPass3 => ({
  value: zeroVec(),
  rate: zeroVec(),
  averagedS: -1,
});

/** The matrix exponential of the filter above over `periodS`. Both in s, positive. */
export function lowPassCoefficients(tauS: number, periodS: number): LowPassCoefficients {
  const a = 1 / tauS;
  const decay = Math.exp(-a * periodS);
  const s = decay * Math.sin(a * periodS);
  const c = decay * Math.cos(a * periodS);
  return {
    tauS,
    periodS,
    valueFromValue: c + s,
    valueFromRate: s / a,
    rateFromValue: -2 * a * s,
    rateFromRate: c - s,
  };
}

export function setVec(target: MutableVec3, x: number, y: number, z: number): void {
  target.x = x;
  target.y = y;
  target.z = z;
}

/** Forgets what came before; `trustS` is how many seconds of it the next mean still counts. */
export function restartLowPass(state: LowPass3, trustS: number): void {
  state.averagedS = trustS > 0 ? trustS : -1;
  setVec(state.rate, 0, 0, 0);
}

/** The first sample, whose period is not known yet: the mean of one. */
export function startLowPass(state: LowPass3, x: number, y: number, z: number): void {
  setVec(state.value, x, y, z);
  setVec(state.rate, 0, 0, 0);
  state.averagedS = 0;
}

export function stepLowPass(
  state: LowPass3,
  c: LowPassCoefficients,
  x: number,
  y: number,
  z: number,
): void {
  if (state.averagedS < c.tauS) return average(state, c.periodS, x, y, z);
  const { value, rate } = state;
  const dx = value.x - x;
  const dy = value.y - y;
  const dz = value.z - z;
  value.x = x + c.valueFromValue * dx + c.valueFromRate * rate.x;
  value.y = y + c.valueFromValue * dy + c.valueFromRate * rate.y;
  value.z = z + c.valueFromValue * dz + c.valueFromRate * rate.z;
  rate.x = c.rateFromValue * dx + c.rateFromRate * rate.x;
  rate.y = c.rateFromValue * dy + c.rateFromRate * rate.y;
  rate.z = c.rateFromValue * dz + c.rateFromRate * rate.z;
}

function average(state: LowPass3, periodS: number, x: number, y: number, z: number): void {
  if (state.averagedS < 0) return startLowPass(state, x, y, z);
  // the sample that started the mean came without a period: it counts as one
  if (state.averagedS === 0) state.averagedS = periodS;
  state.averagedS += periodS;
  const k = periodS / state.averagedS;
  const { value } = state;
  value.x += k * (x - value.x);
  value.y += k * (y - value.y);
  value.z += k * (z - value.z);
}
