import {
  type LowPassCoefficients,
  lowPassCoefficients,
  startLowPass,
  stepLowPass,
} from '../math/lowPass.ts';
import { type MutableQuat, identity, setProduct, turnBy } from '../math/integrate.ts';
import { IDENTITY, type Quat, quat, rotate } from '../math/quat.ts';
import { type Vec3, norm } from '../math/vec3.ts';
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

export interface CoreState extends FilterState {
  readonly bias: BiasState;
  /** Sensor to earth: `level` after `inertial.q`. */
  q: Quat;
  /** Almost inertial frame to earth: what the gyro does not know. */
  readonly level: MutableQuat;
  rest: boolean;
  started: boolean;
  /** `null` before the first period is known. */
  coefficients: CoreCoefficients | null;
  readonly stillness: RestState;
  readonly inertial: InertialState;
}

export const createCore = (p: CoreParameters): CoreState => ({
  q: IDENTITY,
  level: identity(),
  rest: false,
  started: false,
  coefficients: null,
  bias: createBias(p.bias),
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
  setProduct(state.level, state.q, IDENTITY);
}

/** Less than this is free fall, m/s^2: it has no direction to trust. */
const LEAST_FORCE = 0.5;

/** The shortest rotation that turns `force` (any frame) to the vertical of that frame; identity in free fall. */
export function upright(force: Vec3): Quat {
  const n = norm(force);
  if (n < LEAST_FORCE) return IDENTITY;
  if (force.y < 0) return fromBelow(force, n);
  const w = Math.sqrt((1 + force.y / n) / 2);
  const k = 0.5 / (w * n);
  return quat(w, -force.z * k, 0, force.x * k);
}

/** The same for a force that points down, by the sine of the half angle: the cosine is near zero there. */
function fromBelow(force: Vec3, n: number): Quat {
  const level = Math.sqrt(force.x * force.x + force.z * force.z);
  // straight down: any horizontal axis will do
  if (level < 1e-12 * n) return quat(0, 1, 0, 0);
  const s = Math.sqrt((1 - force.y / n) / 2);
  const k = s / level;
  return quat(level / (2 * s * n), -force.z * k, 0, force.x * k);
}

/** Rest, bias range and the almost inertial frame up to this sample. */
export function stepCore(
  state: CoreState,
  p: CoreParameters,
  c: CoreCoefficients,
  { acc, gyro }: Reading,
  dtS: number,
): void {
  const { stillness, inertial, bias } = state;
  stepRest(stillness, p.rest, c.rest, gyro, acc);
  recentre(bias, p.bias, stillness.gyro.value, stillness.quietS);
  state.rest =
    stillness.stillS >= p.rest.minS && distanceFromCentre(bias, stillness.gyro.value) < p.bias.clip;
  turnBy(
    inertial.q,
    (gyro.x - bias.value.x) * dtS,
    (gyro.y - bias.value.y) * dtS,
    (gyro.z - bias.value.z) * dtS,
  );
  if (state.rest) trustStillness(inertial, stillness.acc.value, p.rest.filterTauS);
  const a = rotate(inertial.q, acc);
  stepLowPass(inertial.acc, c.acc, a.x, a.y, a.z);
}

export function coreAfterGap(state: CoreState, p: CoreParameters, gapS: number): void {
  if (!(gapS > 0)) return;
  forgetForce(state.inertial, p.accTauS, gapS);
  state.stillness.stillS = 0;
  state.stillness.quietS = 0;
}
