import { radians } from '../math/angle.ts';
import { type MutableVec3, setVec } from '../math/lowPass.ts';
import { type Vec3, vec3 } from '../math/vec3.ts';

/** Defaults of Laidig & Seel 2023, table of parameters; all rad/s unless named. */
export interface BiasParameters {
  /** Standard deviation before anything is known. */
  readonly sigmaInit: number;
  /** Time in which an unobserved bias becomes unsure by 0.1 deg/s, s. */
  readonly forgettingS: number;
  /** Farthest from its centre that the bias is believed. */
  readonly clip: number;
  /** Standard deviation that motion leads to. */
  readonly sigmaMotion: number;
  /** Weight of the pull of the unobservable vertical part to the centre. */
  readonly verticalForgetting: number;
  /** Standard deviation that rest leads to. */
  readonly sigmaRest: number;
  /** Largest bias that a first deliberate stillness may show (our choice; cheap sensors start at several deg/s). */
  readonly widest: number;
  /** How long that stillness must last, s (our choice). */
  readonly widestAfterS: number;
}

export const BIAS_PARAMETERS: BiasParameters = {
  sigmaInit: radians(0.5),
  forgettingS: 100,
  clip: radians(2),
  sigmaMotion: radians(0.1),
  verticalForgetting: 0.0001,
  sigmaRest: radians(0.03),
  widest: radians(10),
  widestAfterS: 3,
};

/** Variances in (rad/s)^2, for one sample period. */
export interface BiasCoefficients {
  readonly drift: number;
  readonly motion: number;
  readonly vertical: number;
  readonly rest: number;
}

/** A measurement variance is such that, with `drift` each sample, the estimate settles at `sigma`. */
export function biasCoefficients(p: BiasParameters, periodS: number): BiasCoefficients {
  const drift = (radians(0.1) ** 2 * periodS) / p.forgettingS;
  const settlingAt = (sigma: number): number => sigma ** 4 / drift + sigma ** 2;
  const motion = settlingAt(p.sigmaMotion);
  return { drift, motion, vertical: motion / p.verticalForgetting, rest: settlingAt(p.sigmaRest) };
}

/** Kalman estimate of the gyro bias, rad/s, sensor frame. */
export interface BiasState {
  readonly bias: MutableVec3;
  /** Middle of the believed range: zero unless a first long stillness showed more. */
  readonly centre: MutableVec3;
  /** A rest has been seen: the centre stays. */
  known: boolean;
  /** Symmetric covariance, (rad/s)^2. */
  readonly variance: Covariance;
}

interface Covariance {
  xx: number;
  yy: number;
  zz: number;
  xy: number;
  xz: number;
  yz: number;
}

export function createBias(p: BiasParameters): BiasState {
  const v = p.sigmaInit ** 2;
  return {
    bias: { ...vec3(0, 0, 0) },
    centre: { ...vec3(0, 0, 0) },
    known: false,
    variance: { xx: v, yy: v, zz: v, xy: 0, xz: 0, yz: 0 },
  };
}

export const distanceFromCentre = (state: BiasState, rate: Vec3): number => {
  const { centre } = state;
  return Math.hypot(rate.x - centre.x, rate.y - centre.y, rate.z - centre.z);
};

/** A first deliberate stillness at a rate out of the usual range, yet of a size that sensors have, is taken as the bias. */
export function recentre(state: BiasState, p: BiasParameters, rate: Vec3, quietS: number): void {
  if (state.known || quietS < p.widestAfterS) return;
  if (distanceFromCentre(state, rate) < p.clip || Math.hypot(rate.x, rate.y, rate.z) > p.widest)
    return;
  setVec(state.centre, rate.x, rate.y, rate.z);
  setVec(state.bias, rate.x, rate.y, rate.z);
}

/** At rest the rate itself (low-passed, rad/s) is the bias. */
export function observeAtRest(
  state: BiasState,
  p: BiasParameters,
  c: BiasCoefficients,
  rate: Vec3,
): void {
  state.known = true;
  addDrift(state.variance, c.drift);
  const { bias } = state;
  observe(state, 1, 0, 0, rate.x - bias.x, c.rest);
  observe(state, 0, 1, 0, rate.y - bias.y, c.rest);
  observe(state, 0, 0, 1, rate.z - bias.z, c.rest);
  keepInRange(state, p);
}

/** Rows of a rotation matrix, sensor to earth. */
export interface Rows {
  readonly x: Vec3;
  readonly y: Vec3;
  readonly z: Vec3;
}

/**
 * In motion the steady part of the inclination correction shows the bias error in the horizontal
 * plane: `errorX`, `errorZ` (rad/s, earth frame) are its two parts. The vertical part is only
 * pulled, very weakly, to the centre.
 */
export function observeInMotion(
  state: BiasState,
  p: BiasParameters,
  c: BiasCoefficients,
  rows: Rows,
  errorX: number,
  errorZ: number,
): void {
  const { bias, centre } = state;
  const { x, y, z } = rows;
  addDrift(state.variance, c.drift);
  const k = Math.min(1, p.clip / Math.max(Math.hypot(errorX, errorZ), 1e-12));
  const bx = bias.x;
  const by = bias.y;
  const bz = bias.z;
  observe(state, x.x, x.y, x.z, k * errorX, c.motion);
  const changed = z.x * (bias.x - bx) + z.y * (bias.y - by) + z.z * (bias.z - bz);
  observe(state, z.x, z.y, z.z, k * errorZ - changed, c.motion);
  const above = y.x * (centre.x - bias.x) + y.y * (centre.y - bias.y) + y.z * (centre.z - bias.z);
  observe(state, y.x, y.y, y.z, above, c.vertical);
  keepInRange(state, p);
}

function addDrift(v: Covariance, drift: number): void {
  v.xx += drift;
  v.yy += drift;
  v.zz += drift;
}

/** Kalman update by one scalar measurement `h . bias`, `innovation` rad/s off, of the given variance. */
function observe(
  state: BiasState,
  hx: number,
  hy: number,
  hz: number,
  innovation: number,
  variance: number,
): void {
  const { bias, variance: v } = state;
  const px = v.xx * hx + v.xy * hy + v.xz * hz;
  const py = v.xy * hx + v.yy * hy + v.yz * hz;
  const pz = v.xz * hx + v.yz * hy + v.zz * hz;
  const s = 1 / (hx * px + hy * py + hz * pz + variance);
  bias.x += px * s * innovation;
  bias.y += py * s * innovation;
  bias.z += pz * s * innovation;
  v.xx -= px * s * px;
  v.yy -= py * s * py;
  v.zz -= pz * s * pz;
  v.xy -= px * s * py;
  v.xz -= px * s * pz;
  v.yz -= py * s * pz;
}

function keepInRange(state: BiasState, p: BiasParameters): void {
  const far = distanceFromCentre(state, state.bias);
  if (far <= p.clip) return;
  const { bias, centre } = state;
  const k = p.clip / far;
  setVec(
    bias,
    centre.x + k * (bias.x - centre.x),
    centre.y + k * (bias.y - centre.y),
    centre.z + k * (bias.z - centre.z),
  );
}
