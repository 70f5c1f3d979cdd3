import {
  type LowPassCoefficients,
  lowPassCoefficients,
  startLowPass,
  stepLowPass,
} from '../math/lowPass.ts';
import {
  IDENTITY,
  type Quat,
  conjugate,
  fromRotationVector,
  multiply,
  normaliseQuat,
  quat,
  rotate,
} from '../math/quat.ts';
import { type Vec3, norm, scale, subtract } from '../math/vec3.ts';
import {
  BIAS_PARAMETERS,
  type BiasCoefficients,
  type BiasParameters,
  type BiasState,
  biasCoefficients,
  createBias,
  distanceFromCentre,
  recentre,
} from './gyroBias.ts';
import {
  type InertialState,
  createInertial,
  forgetForce,
  trustStillness,
} from './inertialFrame.ts';
import type { FilterState, Reading } from './orientation.ts';
import { isReading } from './reading.ts';
import {
  REST_PARAMETERS,
  type RestParameters,
  type RestState,
  createRest,
  stepRest,
} from './rest.ts';

// What every filter here stands on: rest, gyro bias, the almost inertial frame. Earth frames are Y up.

export interface CoreParameters {
  /** Time constant of the force average, s; Laidig & Seel 2023. */
  readonly accTauS: number;
  readonly rest: RestParameters;
  readonly bias: BiasParameters;
}

export const CORE_PARAMETERS: CoreParameters = {
  accTauS: 3,
  rest: REST_PARAMETERS,
  bias: BIAS_PARAMETERS,
};

/** What follows from the parameters and the sample period. */
export interface CoreCoefficients {
  readonly periodS: number;
  readonly acc: LowPassCoefficients;
  readonly rest: LowPassCoefficients;
  readonly bias: BiasCoefficients;
}

export interface CoreState extends FilterState, BiasState {
  readonly bias: BiasState['bias'];
  /** Sensor to earth. */
  q: Quat;
  rest: boolean;
  started: boolean;
  /** `null` before the first period is known. */
  coefficients: CoreCoefficients | null;
  readonly stillness: RestState;
  readonly inertial: InertialState;
}

/** Everything but `rest`, which the caller's filter adds to. */
export const createCore = (p: CoreParameters): CoreState => ({
  q: IDENTITY,
  rest: false,
  started: false,
  coefficients: null,
  ...createBias(p.bias),
  stillness: createRest(),
  inertial: createInertial(),
});

// Steps longer than this hold nothing that could be integrated.
const LONGEST_STEP_S = 10;
// Coefficients follow the period when it moves by more than this part of it.
const PERIOD_TOLERANCE = 0.02;

/** Whether there is a step to make; the first sample only levels. */
export function accepts(state: CoreState, p: CoreParameters, s: Reading, dtS: number): boolean {
  if (!isReading(s)) return false;
  if (!state.started) {
    start(state, s);
    return false;
  }
  if (!(dtS > 0) || !(dtS < LONGEST_STEP_S)) return false;
  const now = state.coefficients?.periodS ?? 0;
  if (Math.abs(dtS - now) > PERIOD_TOLERANCE * now) state.coefficients = coefficientsOf(p, dtS);
  return true;
}

const coefficientsOf = (p: CoreParameters, periodS: number): CoreCoefficients => ({
  periodS,
  acc: lowPassCoefficients(p.accTauS, periodS),
  rest: lowPassCoefficients(p.rest.filterTauS, periodS),
  bias: biasCoefficients(p.bias, periodS),
});

function start(state: CoreState, { acc, gyro }: Reading): void {
  state.started = true;
  startLowPass(state.inertial.acc, acc.x, acc.y, acc.z);
  startLowPass(state.stillness.acc, acc.x, acc.y, acc.z);
  startLowPass(state.stillness.gyro, gyro.x, gyro.y, gyro.z);
  state.q = upright(acc);
}

/** Less than this is free fall, m/s^2: it has no direction to trust. */
const LEAST_FORCE = 0.5;

/** The shortest rotation that turns `force` (any frame) to the vertical of that frame; identity in free fall. */
export function upright(force: Vec3): Quat {
  const n = norm(force);
  if (n < LEAST_FORCE) return IDENTITY;
  const w = Math.sqrt(Math.max(0, (1 + force.y / n) / 2));
  // straight down: any horizontal axis will do
  if (w < 1e-6) return quat(0, 1, 0, 0);
  const k = 0.5 / (w * n);
  return normaliseQuat(quat(w, -force.z * k, 0, force.x * k));
}

/** Almost inertial frame to earth: what the gyro does not know. */
export const levelOf = (state: CoreState): Quat => multiply(state.q, conjugate(state.inertial.q));

/** Rest, bias range and the almost inertial frame up to this sample; returns the turn made, rad, sensor frame. */
export function stepCore(
  state: CoreState,
  p: CoreParameters,
  c: CoreCoefficients,
  { acc, gyro }: Reading,
  dtS: number,
): Vec3 {
  const { stillness, inertial } = state;
  stepRest(stillness, p.rest, c.rest, gyro, acc);
  recentre(state, p.bias, stillness.gyro.value, stillness.quietS);
  state.rest =
    stillness.stillS >= p.rest.minS &&
    distanceFromCentre(state, stillness.gyro.value) < p.bias.clip;
  const turn = scale(subtract(gyro, state.bias), dtS);
  inertial.q = normaliseQuat(multiply(inertial.q, fromRotationVector(turn)));
  if (state.rest) trustStillness(inertial, stillness.acc.value, p.rest.filterTauS);
  const a = rotate(inertial.q, acc);
  stepLowPass(inertial.acc, c.acc, a.x, a.y, a.z);
  return turn;
}

export function coreAfterGap(state: CoreState, p: CoreParameters, gapS: number): void {
  if (!(gapS > 0)) return;
  forgetForce(state.inertial, p.accTauS, gapS);
  state.stillness.stillS = 0;
  state.stillness.quietS = 0;
}
