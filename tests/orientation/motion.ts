import { radians } from '../../src/math/angle.ts';
import { identity, rotationBetween, setProduct, turnBy } from '../../src/math/integrate.ts';
import { IDENTITY, type Quat, aboutY, rotate, rotateInverse } from '../../src/math/quat.ts';
import { gaussian, seededRandom, uniform } from '../../src/math/random.ts';
import { type Vec3, ZERO, add, scale, vec3 } from '../../src/math/vec3.ts';
import type { ImuSample } from '../../src/sensors/sample.ts';
import { UP, sample } from './imu.ts';

export interface MotionOptions {
  readonly seed: number;
  readonly rateHz: number;
  /** Still before and after, s. */
  readonly stillS: number;
  readonly movingS: number;
  /** About the largest rate on each axis, deg/s. */
  readonly rateDegPerS: number;
  /** About the largest linear acceleration on each axis, m/s^2. */
  readonly accPeak: number;
  readonly biasDegPerS: Vec3;
  /** Standard deviation of white noise, deg/s and m/s^2. */
  readonly noise: { readonly gyroDegPerS: number; readonly acc: number };
  /** Attitude at the start. */
  readonly start: Quat;
  /** The whole scene, movement and all, turned about the vertical, rad. */
  readonly headingRad: number;
}

const MOTION: MotionOptions = {
  seed: 1,
  rateHz: 100,
  stillS: 4,
  movingS: 20,
  rateDegPerS: 150,
  accPeak: 3,
  biasDegPerS: ZERO,
  noise: { gyroDegPerS: 0, acc: 0 },
  start: IDENTITY,
  headingRad: 0,
};

export interface Motion {
  readonly samples: readonly ImuSample[];
  /** Sensor to earth, one for each sample. */
  readonly truth: readonly Quat[];
}

// Fine enough for the truth to be right to 1e-8 rad at the rates used here.
const FINE_S = 0.0005;

/** A simulated movement with exact truth: still, a smooth wandering turn and shake, still again. */
export function simulate(options: Partial<MotionOptions> = {}): Motion {
  const o = { ...MOTION, ...options };
  const random = seededRandom(o.seed);
  const turning = wander(random, radians(o.rateDegPerS), 0.1, 1.2);
  const shaking = wander(random, o.accPeak, 0.5, 3);
  const facing = aboutY(o.headingRad);
  const bias = scale(o.biasDegPerS, radians(1));
  const q = identity();
  setProduct(q, facing, o.start);
  const samples: ImuSample[] = [];
  const truth: Quat[] = [];
  const count = Math.round((2 * o.stillS + o.movingS) * o.rateHz);
  for (let i = 0; i <= count; i++) {
    const t = i / o.rateHz;
    if (i > 0) carry(q, (s) => scale(turning(s), envelope(s, o)), (i - 1) / o.rateHz, t);
    const acc = rotateInverse(q, add(UP, rotate(facing, scale(shaking(t), envelope(t, o)))));
    const gyro = add(scale(turning(t), envelope(t, o)), bias);
    samples.push(
      sample(t, noisy(random, acc, o.noise.acc), noisy(random, gyro, radians(o.noise.gyroDegPerS))),
    );
    truth.push({ ...q });
  }
  return { samples, truth };
}

/** Each axis a sum of three sines between two frequencies, Hz. */
function wander(
  random: () => number,
  peak: number,
  low: number,
  high: number,
): (t: number) => Vec3 {
  const axis = (): ((t: number) => number) => {
    const waves = [1, 2, 3].map(() => ({
      w: 2 * Math.PI * uniform(random, low, high),
      phase: uniform(random, 0, 2 * Math.PI),
    }));
    return (t) => (peak / 2) * waves.reduce((sum, v) => sum + Math.sin(v.w * t + v.phase), 0);
  };
  const [x, y, z] = [axis(), axis(), axis()];
  return (t) => vec3(x(t), y(t), z(t));
}

/** 0 while still, 1 in the middle of the movement, smooth between. */
function envelope(t: number, { stillS, movingS }: MotionOptions): number {
  const into = Math.min(t - stillS, stillS + movingS - t);
  return into <= 0 ? 0 : into >= 1 ? 1 : (1 - Math.cos(Math.PI * into)) / 2;
}

function carry(
  q: ReturnType<typeof identity>,
  rate: (t: number) => Vec3,
  from: number,
  to: number,
): void {
  const n = Math.ceil((to - from) / FINE_S);
  const h = (to - from) / n;
  for (let i = 0; i < n; i++) {
    const turn = rotationBetween(rate(from + i * h), rate(from + (i + 1) * h), h);
    turnBy(q, turn.x, turn.y, turn.z);
  }
}

const noisy = (random: () => number, v: Vec3, sigma: number): Vec3 =>
  sigma === 0
    ? v
    : vec3(
        v.x + sigma * gaussian(random),
        v.y + sigma * gaussian(random),
        v.z + sigma * gaussian(random),
      );
