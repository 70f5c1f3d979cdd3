import { radians } from '../math/angle.ts';
import { STANDARD_GRAVITY } from '../math/gravity.ts';
import { type Vec3, ZERO, add, dot, norm, scale, subtract, vec3 } from '../math/vec3.ts';

/**
 * Zero-g offset of one accelerometer, from the norm at rest: whichever way the sensor lies still,
 * |acc - bias| is gravity. Each way tells of one direction; a Kalman filter with three states
 * keeps what is not yet known uncertain (Frosio et al. 2009, IEEE TIM 58:2034, auto-calibration by gravity).
 * An offset of 0.2 m/s^2 would tilt a segment by 1.2 deg, and by twice that between two postures.
 */
export interface AccBiasState {
  /** m/s^2, sensor frame. */
  bias: Vec3;
  /** Covariance, (m/s^2)^2, rows. */
  covariance: [Vec3, Vec3, Vec3];
  window: RestWindow | null;
  /** Mean force of the window before, if it was still. */
  before: Vec3 | null;
}

/** A stretch of samples that may turn out to have been still. Plain data. */
interface RestWindow {
  fromS: number;
  count: number;
  acc: Vec3;
  accSquare: number;
  gyro: Vec3;
  gyroSquare: number;
}

const PARAMETERS = {
  /** Length of one look, s. */
  windowS: 0.4,
  /** Scatter while still: a hand held out trembles. */
  gyroScatter: radians(2.5),
  accScatter: 0.25,
  /** From one look to the next the mean force stays within this, m/s^2: a hand carried along is not at rest. */
  accChange: 0.1,
  /** Zero-g offset of a consumer sensor, one standard deviation, m/s^2 (data sheets say +-40 mg at most). */
  prior: 0.25,
  /** What a scale error or a tremor may do to one look, m/s^2. */
  look: 0.04,
  /** Independent glimpses in one look: tremor of some 8 Hz. */
  glimpses: 4,
  /** Never believed to be larger, m/s^2 an axis. */
  largest: 0.8,
} as const;

export const createAccBias = (): AccBiasState => ({
  bias: ZERO,
  covariance: [
    vec3(PARAMETERS.prior ** 2, 0, 0),
    vec3(0, PARAMETERS.prior ** 2, 0),
    vec3(0, 0, PARAMETERS.prior ** 2),
  ],
  window: null,
  before: null,
});

/** Takes one raw reading (m/s^2, rad/s, sensor frame). Returns true where the bias has changed. */
export function stepAccBias(s: AccBiasState, timeS: number, acc: Vec3, gyro: Vec3): boolean {
  const w = s.window;
  if (w === null || timeS < w.fromS || timeS - w.fromS > 2 * PARAMETERS.windowS) {
    s.window = open(timeS);
    s.before = null;
    return false;
  }
  w.count += 1;
  w.acc = add(w.acc, acc);
  w.accSquare += dot(acc, acc);
  w.gyro = add(w.gyro, gyro);
  w.gyroSquare += dot(gyro, gyro);
  if (timeS - w.fromS < PARAMETERS.windowS) return false;
  s.window = open(timeS);
  const { before } = s;
  const mean = scale(w.acc, 1 / w.count);
  s.before = isStill(w) ? mean : null;
  if (s.before === null || before === null) return false;
  return norm(subtract(mean, before)) < PARAMETERS.accChange && look(s, mean, w);
}

const open = (fromS: number): RestWindow => ({
  fromS,
  count: 0,
  acc: ZERO,
  accSquare: 0,
  gyro: ZERO,
  gyroSquare: 0,
});

const scatter = (sum: Vec3, square: number, n: number): number =>
  Math.sqrt(Math.max(0, square / n - dot(sum, sum) / (n * n)));

const isStill = (w: RestWindow): boolean =>
  w.count >= 10 &&
  scatter(w.gyro, w.gyroSquare, w.count) < PARAMETERS.gyroScatter &&
  scatter(w.acc, w.accSquare, w.count) < PARAMETERS.accScatter;

/** Kalman update with the one number that a still look gives: its norm. */
function look(s: AccBiasState, mean: Vec3, w: RestWindow): boolean {
  const tremor = scatter(w.acc, w.accSquare, w.count);
  const noise = PARAMETERS.look ** 2 + tremor ** 2 / PARAMETERS.glimpses;
  const force = subtract(mean, s.bias);
  const size = Math.sqrt(dot(force, force));
  // far from gravity: units or range are wrong, which is not an offset
  if (Math.abs(size / STANDARD_GRAVITY - 1) > 0.1) return false;
  const h = scale(force, 1 / size);
  const [rx, ry, rz] = s.covariance;
  const ph = vec3(dot(rx, h), dot(ry, h), dot(rz, h));
  const k = scale(ph, 1 / (dot(h, ph) + noise));
  const bias = add(s.bias, scale(k, size - STANDARD_GRAVITY));
  s.covariance = [
    subtract(rx, scale(ph, k.x)),
    subtract(ry, scale(ph, k.y)),
    subtract(rz, scale(ph, k.z)),
  ];
  if (Math.max(Math.abs(bias.x), Math.abs(bias.y), Math.abs(bias.z)) > PARAMETERS.largest)
    return false;
  s.bias = bias;
  return true;
}
