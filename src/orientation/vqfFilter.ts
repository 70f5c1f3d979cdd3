import { setProduct } from '../math/integrate.ts';
import { type LowPass3, createLowPass3, stepLowPass } from '../math/lowPass.ts';
import { multiply, rotate } from '../math/quat.ts';
import { type Vec3, vec3 } from '../math/vec3.ts';
import {
  CORE_PARAMETERS,
  type CoreCoefficients,
  type CoreParameters,
  type CoreState,
  accepts,
  coreAfterGap,
  createCore,
  stepCore,
  upright,
} from './filterCore.ts';
import { observeAtRest, observeInMotion } from './gyroBias.ts';
import type { OrientationFilter } from './orientation.ts';

/**
 * 6-axis filter after the published idea of Laidig & Seel 2023 (doi 10.1016/j.inffus.2022.10.014):
 * exact integration leads to an almost inertial frame, gravity is what the specific force averages
 * to there, one small rotation levels it, and what that rotation keeps having to correct is gyro bias.
 */
export interface VqfState extends CoreState {
  /** Low-passed rows of the rotation sensor to earth; the bias seen from the earth through them. */
  readonly rows: { readonly x: LowPass3; readonly y: LowPass3; readonly z: LowPass3 };
  readonly earthBias: LowPass3;
}

const create = (p: CoreParameters): VqfState =>
  Object.assign(createCore(p), {
    rows: { x: createLowPass3(), y: createLowPass3(), z: createLowPass3() },
    earthBias: createLowPass3(),
  });

/** Turns the average force upright; returns the small rotation made, rad, earth frame. */
function levelOut(state: VqfState): Vec3 {
  const correction = upright(rotate(state.level, state.inertial.acc.value));
  setProduct(state.level, correction, state.level);
  state.q = multiply(state.level, state.inertial.q);
  return vec3(2 * correction.x, 2 * correction.y, 2 * correction.z);
}

/** The rows of the rotation and the bias through them, averaged as slowly as the force is. */
function averageRotation(state: VqfState, c: CoreCoefficients): void {
  const { q, rows, earthBias } = state;
  const bias = state.bias.value;
  const { w, x, y, z } = q;
  const xx = 1 - 2 * (y * y + z * z);
  const xy = 2 * (x * y - w * z);
  const xz = 2 * (x * z + w * y);
  const yx = 2 * (x * y + w * z);
  const yy = 1 - 2 * (x * x + z * z);
  const yz = 2 * (y * z - w * x);
  const zx = 2 * (x * z - w * y);
  const zy = 2 * (y * z + w * x);
  const zz = 1 - 2 * (x * x + y * y);
  stepLowPass(rows.x, c.acc, xx, xy, xz);
  stepLowPass(rows.y, c.acc, yx, yy, yz);
  stepLowPass(rows.z, c.acc, zx, zy, zz);
  stepLowPass(
    earthBias,
    c.acc,
    xx * bias.x + xy * bias.y + xz * bias.z,
    0,
    zx * bias.x + zy * bias.y + zz * bias.z,
  );
}

const along = (row: LowPass3, v: Vec3): number =>
  row.value.x * v.x + row.value.y * v.y + row.value.z * v.z;

function learnBias(
  state: VqfState,
  p: CoreParameters,
  c: CoreCoefficients,
  correction: Vec3,
): void {
  const { rows, earthBias, bias } = state;
  if (state.rest) return observeAtRest(bias, p.bias, c.bias, state.stillness.gyro.value);
  const errorX = earthBias.value.x - along(rows.x, bias.value) - correction.x / c.periodS;
  const errorZ = earthBias.value.z - along(rows.z, bias.value) - correction.z / c.periodS;
  observeInMotion(bias, p.bias, c.bias, rows, errorX, errorZ);
}

function createVqfFilter(name: string, p: CoreParameters): OrientationFilter<VqfState> {
  return {
    name,
    create: () => create(p),
    update(state, sample, dtS) {
      if (!accepts(state, p, sample, dtS) || state.coefficients === null) return state.q;
      const c = state.coefficients;
      stepCore(state, p, c, sample, dtS);
      const correction = levelOut(state);
      averageRotation(state, c);
      learnBias(state, p, c, correction);
      return state.q;
    },
    afterGap: (state, gapS) => coreAfterGap(state, p, gapS),
  };
}

/** With the parameters of the paper. */
export const vqfFilter = createVqfFilter('vqf', CORE_PARAMETERS);
