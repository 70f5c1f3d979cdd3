import AHRS from 'ahrs';
import { radians } from '../math/angle.ts';
import { setProduct } from '../math/integrate.ts';
import { type Quat, conjugate, multiply, normaliseQuat, quat, rotate } from '../math/quat.ts';
import { type Vec3, UNIT_Y, ZERO, angleBetween, norm, scale, subtract } from '../math/vec3.ts';
import {
  CORE_PARAMETERS,
  type CoreParameters,
  type CoreState,
  accepts,
  coreAfterGap,
  createCore,
  stepCore,
  upright,
} from './filterCore.ts';
import { observeAtRest } from './gyroBias.ts';
import type { OrientationFilter } from './orientation.ts';

/**
 * The filters of the package `ahrs` 1.3.3, used so that none of its faults can show:
 * - its attitude is hidden and cannot be set, and one NaN stays in it for ever: each step starts
 *   from its own exact identity in *our* earth frame, so that it returns the small turn since the
 *   last sample and everything that lasts is in our state. (Both algorithms are the same in any
 *   frame: they only use products of vectors given in one frame.)
 * - `sampleInterval` is in ms, dt 0 is ignored and a dt once given sticks: dt is given with every
 *   step and is never 0; the interval given at the start is never used.
 * - first-order integration: rates are scaled by tan(x)/x, which makes it exact.
 * - Mahony gives no feedback where any one axis of the force reads exactly 0; Madgwick divides by
 *   a gradient that is exactly 0 when level: the first gets a force without zeros, the second none when level.
 * - it starts level and turns to the truth slowly: our first sample levels.
 * - beta 0 is ignored: gains are fixed here. 6-axis only without a magnetic field: 0, 0, 0.
 * Its frame is Z up; ours is Y up: (x, y, z) here is (y, z, x) there.
 */
type AhrsEngine = AHRS & {
  /** Sets the attitude from force and magnetic field; in the package's interface, not in its types. */
  init(ax: number, ay: number, az: number, mx: number, my: number, mz: number): void;
};

interface Algorithm {
  readonly algorithm: 'Mahony' | 'Madgwick';
  /** 1/s */
  readonly gain: number;
  /** Feedback from the force averaged in the almost inertial frame, or from each reading. */
  readonly force: 'average' | 'reading';
}

/** The interval is required by the constructor and replaced before its first use. */
const engineOf = ({ algorithm, gain }: Algorithm): AhrsEngine =>
  new AHRS({ sampleInterval: 1, algorithm, kp: gain, beta: gain }) as AhrsEngine;

/** Largest angle that the package is given in one step, rad. */
const LARGEST_STEP = 0.5;
/** Relative size below which a force component counts as zero: far below any angle that matters. */
const NEARLY_LEVEL = 1e-9;

/** Turn in `dtS` at `rate` (rad/s) with feedback from `force` (any unit), all in the earth frame. */
function turnInEarth(engine: AhrsEngine, rate: Vec3, force: Vec3, dtS: number): Quat {
  const steps = Math.max(1, Math.ceil((norm(rate) * dtS) / LARGEST_STEP));
  let turn = oneStep(engine, rate, force, dtS / steps);
  for (let i = 1; i < steps; i++) turn = multiply(oneStep(engine, rate, ZERO, dtS / steps), turn);
  return turn;
}

function oneStep(engine: AhrsEngine, rate: Vec3, force: Vec3, dtS: number): Quat {
  const half = (norm(rate) * dtS) / 2;
  const r = half > 0 ? scale(rate, Math.tan(half) / half) : rate;
  engine.init(0, 0, 1, 1, 0, 0); // exact identity
  engine.update(r.z, r.x, r.y, force.z, force.x, force.y, 0, 0, 0, dtS);
  const q = engine.getQuaternion();
  return quat(q.w, q.y, q.z, q.x);
}

const isNearlyLevel = (f: Vec3): boolean =>
  Math.abs(f.x) + Math.abs(f.z) < NEARLY_LEVEL * Math.abs(f.y);

/** A force that the package can digest: none when there is nothing to correct, no exact zero else. */
function digestible(force: Vec3): Vec3 {
  const n = norm(force);
  if (n < 0.5 || (force.y > 0 && isNearlyLevel(force))) return ZERO;
  const f = scale(force, 1 / n);
  const away = (v: number): number => (Math.abs(v) < NEARLY_LEVEL ? NEARLY_LEVEL : v);
  return { x: away(f.x), y: away(f.y), z: away(f.z) };
}

/** At rest an attitude this far off is not worth waiting for. */
const FAR_OFF = radians(10);

/** Sets the attitude and, with it, the level of the almost inertial frame. */
function setAttitude(state: CoreState, q: Quat): void {
  state.q = normaliseQuat(q);
  setProduct(state.level, state.q, conjugate(state.inertial.q));
}

function createAhrsFilter(
  name: string,
  algorithm: Algorithm,
  p: CoreParameters = CORE_PARAMETERS,
): OrientationFilter<CoreState> {
  const engine = engineOf(algorithm);
  return {
    name,
    create: () => createCore(p),
    update(state, sample, dtS) {
      if (!accepts(state, p, sample, dtS) || state.coefficients === null) return state.q;
      const before = state.q;
      const rate = rotate(before, subtract(sample.gyro, state.bias.value));
      stepCore(state, p, state.coefficients, sample, dtS);
      const { inertial, stillness } = state;
      const seen =
        algorithm.force === 'average' ? inertial.acc.value : rotate(inertial.q, sample.acc);
      const force = digestible(rotate(state.level, seen));
      setAttitude(state, multiply(turnInEarth(engine, rate, force, dtS), before));
      if (state.rest) {
        observeAtRest(state.bias, p.bias, state.coefficients.bias, stillness.gyro.value);
        levelAtRest(state, stillness.acc.value);
      }
      return state.q;
    },
    afterGap: (state, gapS) => coreAfterGap(state, p, gapS),
  };
}

function levelAtRest(state: CoreState, still: Vec3): void {
  const force = rotate(state.q, still);
  if (angleBetween(force, UNIT_Y) < FAR_OFF) return;
  setAttitude(state, multiply(upright(force), state.q));
}

/** Gain 1, the force averaged as the published VQF idea has it, gyro bias at rest. */
export const mahonyFilter = createAhrsFilter('ahrs mahony', {
  algorithm: 'Mahony',
  gain: 1,
  force: 'average',
});

/** Gain 0.03, gyro bias at rest. */
export const madgwickFilter = createAhrsFilter('ahrs madgwick', {
  algorithm: 'Madgwick',
  gain: 0.03,
  force: 'reading',
});
