import { STANDARD_GRAVITY } from '../../../math/gravity.ts';
import {
  type Quat,
  IDENTITY,
  aboutX,
  aboutY,
  aboutZ,
  fromRotationVector,
  multiply,
  rotateInverse,
} from '../../../math/quat.ts';
import { type Random, gaussian, uniform } from '../../../math/random.ts';
import { radians } from '../../../math/angle.ts';
import { type Vec3, ZERO, add, normalise, scale, vec3 } from '../../../math/vec3.ts';
import type { Kinematics } from './chain.ts';
import type { SimulatedDevice } from './worn.ts';

/** Errors of a sensor. Zero in a field switches that error off. */
export interface NoiseModel {
  /** White noise density, (deg/s)/sqrt(Hz) and (m/s^2)/sqrt(Hz). */
  readonly gyroDensityDps: number;
  readonly accDensity: number;
  /** Spread of the constant offset per axis, deg/s and m/s^2. */
  readonly gyroBiasDps: number;
  readonly accBias: number;
  /** Random walk of the offset, per sqrt(s). */
  readonly gyroWalkDps: number;
  readonly accWalk: number;
  /** Full scales of the int16 counts, g and deg/s; 0 = not quantised, never saturated. */
  readonly accRangeG: number;
  readonly gyroRangeDps: number;
  /** Largest tilt of the strapped sensor from its nominal place, deg. */
  readonly mountingDeg: number;
}

/**
 * A consumer sensor of the LSM6DS3 class. Noise densities near its data sheet's 7 mdps and 90 ug per
 * sqrt(Hz), offsets as after a coarse factory trim, walks: from memory, no source.
 */
export const REALISTIC: NoiseModel = {
  gyroDensityDps: 0.008,
  accDensity: 0.0015,
  gyroBiasDps: 0.8,
  accBias: 0.06,
  gyroWalkDps: 0.003,
  accWalk: 0.0003,
  accRangeG: 16,
  gyroRangeDps: 2000,
  mountingDeg: 25,
};

/** Exact readings, sensor axes still mounted at random. */
export const NOISE_FREE: NoiseModel = {
  gyroDensityDps: 0,
  accDensity: 0,
  gyroBiasDps: 0,
  accBias: 0,
  gyroWalkDps: 0,
  accWalk: 0,
  accRangeG: 0,
  gyroRangeDps: 0,
  mountingDeg: 25,
};

const GRAVITY = vec3(0, STANDARD_GRAVITY, 0);
const FULL = 32767;

export interface SensorState {
  readonly noise: NoiseModel;
  readonly random: Random;
  /** Sensor to segment. */
  readonly mounting: Quat;
  gyroBias: Vec3;
  accBias: Vec3;
}

const gaussianVec = (random: Random, sd: number): Vec3 =>
  sd === 0 ? ZERO : scale(vec3(gaussian(random), gaussian(random), gaussian(random)), sd);

/**
 * Sensor to segment: on the chest the face looks forward, on the arm outward; the strap may hold the
 * box any way round (turned about its face), and the face is off by up to `mountingDeg`.
 */
function mountingOf(sensor: SimulatedDevice, random: Random, mostDeg: number): Quat {
  const face = sensor === 'chest' ? aboutY(Math.PI / 2) : IDENTITY;
  const strap = aboutZ(uniform(random, 0, 2 * Math.PI));
  const axis = normalise(gaussianVec(random, 1)) ?? vec3(1, 0, 0);
  const tilt = fromRotationVector(scale(axis, radians(uniform(random, 0, mostDeg))));
  return multiply(multiply(tilt, face), strap);
}

/** Worn the other way up than its mounting says. */
export const upsideDown = (mounting: Quat): Quat => multiply(aboutX(Math.PI), mounting);

export function createSensor(
  sensor: SimulatedDevice,
  random: Random,
  noise: NoiseModel,
): SensorState {
  const mounting = mountingOf(sensor, random, noise.mountingDeg);
  return {
    noise,
    random,
    mounting,
    gyroBias: gaussianVec(random, radians(noise.gyroBiasDps)),
    accBias: gaussianVec(random, noise.accBias),
  };
}

export interface Reading {
  /** m/s^2 */
  readonly acc: Vec3;
  /** rad/s */
  readonly gyro: Vec3;
  readonly saturated: boolean;
}

/** What a perfect sensor at the site reads, sensor frame. */
export function idealReading(site: Kinematics, mounting: Quat): Omit<Reading, 'saturated'> {
  const q = multiply(site.q, mounting);
  return {
    acc: rotateInverse(q, add(site.acceleration, GRAVITY)),
    gyro: rotateInverse(q, site.rate),
  };
}

/** Rounds to counts of a symmetric int16 range, and back; `clipped` at its ends. */
function quantise(v: Vec3, fullScale: number): { readonly v: Vec3; readonly clipped: boolean } {
  if (fullScale === 0) return { v, clipped: false };
  const step = fullScale / 32768;
  // Sign apart, so that a mirrored value gives the mirrored count.
  const count = (x: number): number =>
    Math.sign(x) * Math.min(FULL, Math.round(Math.abs(x) / step));
  const counts = [count(v.x), count(v.y), count(v.z)] as const;
  return {
    v: scale(vec3(...counts), step),
    clipped: counts.some((c) => Math.abs(c) >= FULL),
  };
}

/** One reading with all errors; moves the random walks on by `dtS`. */
export function readSensor(state: SensorState, site: Kinematics, dtS: number): Reading {
  const { noise, random } = state;
  const walk = Math.sqrt(dtS);
  state.gyroBias = add(state.gyroBias, gaussianVec(random, radians(noise.gyroWalkDps) * walk));
  state.accBias = add(state.accBias, gaussianVec(random, noise.accWalk * walk));
  // White noise of density d sampled each dt has deviation d sqrt(1 / (2 dt)).
  const band = Math.sqrt(0.5 / dtS);
  const ideal = idealReading(site, state.mounting);
  const acc = add(add(ideal.acc, state.accBias), gaussianVec(random, noise.accDensity * band));
  const gyroNoise = gaussianVec(random, radians(noise.gyroDensityDps) * band);
  const gyro = add(add(ideal.gyro, state.gyroBias), gyroNoise);
  const a = quantise(acc, noise.accRangeG * STANDARD_GRAVITY);
  const g = quantise(gyro, radians(noise.gyroRangeDps));
  return { acc: a.v, gyro: g.v, saturated: a.clipped || g.clipped };
}
