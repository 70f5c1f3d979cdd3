import { radians } from '../math/angle.ts';
import { type MutableVec3, setVec, zeroVec } from '../math/lowPass.ts';
import { type Vec3, UNIT_X, UNIT_Y, UNIT_Z, norm } from '../math/vec3.ts';

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
  readonly value: MutableVec3;
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
    value: zeroVec(),
    centre: zeroVec(),
    known: false,
    variance: { xx: v, yy: v, zz: v, xy: 0, xz: 0, yz: 0 },
  };
}

export function distanceFromCentre({ centre }: BiasState, rate: Vec3): number {
  const x = rate.x - centre.x;
  const y = rate.y - centre.y;
  const z = rate.z - centre.z;
  return Math.sqrt(x * x + y * y + z * z);
}

/**
 * A first deliberate stillness at a rate out of the usual range, yet of a size that sensors have,
 * is taken as the bias. It may have been a slow steady turn: a later stillness nearer zero wins.
 */
export function recentre(state: BiasState, p: BiasParameters, rate: Vec3, quietS: number): void {
  if (quietS < p.widestAfterS || distanceFromCentre(state, rate) < p.clip) return;
  const size = norm(rate);
  const settled = state.known && !isPinned(state, p);
  if (size > p.widest || (settled && size > norm(state.centre))) return;
  const k = size < p.clip ? 0 : 1;
  setVec(state.centre, k * rate.x, k * rate.y, k * rate.z);
  setVec(state.value, rate.x, rate.y, rate.z);
}

/** The estimate has run to the end of its range: what was taken for the bias was too small. */
const isPinned = (state: BiasState, p: BiasParameters): boolean =>
  distanceFromCentre(state, state.value) > 0.9 * p.clip;

/** At rest the rate itself (low-passed, rad/s) is the bias. */
export function observeAtRest(
  state: BiasState,
  p: BiasParameters,
  c: BiasCoefficients,
  rate: Vec3,
): void {
  state.known = true;
  addDrift(state.variance, c.drift);
  const { value } = state;
  observe(state, UNIT_X, rate.x - value.x, c.rest);
  observe(state, UNIT_Y, rate.y - value.y, c.rest);
  observe(state, UNIT_Z, rate.z - value.z, c.rest);
  keepInRange(state, p);
}

/** Averaged rows of the rotation matrix, sensor to earth. */
export interface Rows {
  readonly x: { readonly value: Vec3 };
  readonly y: { readonly value: Vec3 };
  readonly z: { readonly value: Vec3 };
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
  const { value, centre } = state;
  const x = rows.x.value;
  const y = rows.y.value;
  const z = rows.z.value;
  addDrift(state.variance, c.drift);
  const k = Math.min(1, p.clip / Math.sqrt(errorX * errorX + errorZ * errorZ + 1e-30));
  const bx = value.x;
  const by = value.y;
  const bz = value.z;
  observe(state, x, k * errorX, c.motion);
  const changed = z.x * (value.x - bx) + z.y * (value.y - by) + z.z * (value.z - bz);
  observe(state, z, k * errorZ - changed, c.motion);
  const above =
    y.x * (centre.x - value.x) + y.y * (centre.y - value.y) + y.z * (centre.z - value.z);
  observe(state, y, above, c.vertical);
  keepInRange(state, p);
}

function addDrift(v: Covariance, drift: number): void {
  v.xx += drift;
  v.yy += drift;
  v.zz += drift;
}

/** Kalman update by one scalar measurement `h . bias`, `innovation` rad/s off, of the given variance. */
function observe(
  { value, variance: v }: BiasState,
  h: Vec3,
  innovation: number,
  variance: number,
): void {
  const { x, y, z } = h;
  const px = v.xx * x + v.xy * y + v.xz * z;
  const py = v.xy * x + v.yy * y + v.yz * z;
  const pz = v.xz * x + v.yz * y + v.zz * z;
  const s = 1 / (x * px + y * py + z * pz + variance);
  value.x += px * s * innovation;
  value.y += py * s * innovation;
  value.z += pz * s * innovation;
  v.xx -= px * s * px;
  v.yy -= py * s * py;
  v.zz -= pz * s * pz;
  v.xy -= px * s * py;
  v.xz -= px * s * pz;
  v.yz -= py * s * pz;
}

function keepInRange(state: BiasState, p: BiasParameters): void {
  const far = distanceFromCentre(state, state.value);
  if (far <= p.clip) return;
  const { value, centre } = state;
  const k = p.clip / far;
  setVec(
    value,
    centre.x + k * (value.x - centre.x),
    centre.y + k * (value.y - centre.y),
    centre.z + k * (value.z - centre.z),
  );
}
