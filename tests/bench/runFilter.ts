import { type MutableQuat, identity, setProduct, turnBy } from '../../src/math/integrate.ts';
import { IDENTITY, type Quat } from '../../src/math/quat.ts';
import { ZERO } from '../../src/math/vec3.ts';
import { madgwickFilter, mahonyFilter } from '../../src/orientation/ahrsFilter.ts';
import { defaultFilter } from '../../src/orientation/defaultFilter.ts';
import { upright } from '../../src/orientation/filterCore.ts';
import type { FilterState, OrientationFilter } from '../../src/orientation/orientation.ts';
import { createTrack, stepTrack } from '../../src/orientation/track.ts';
import { vqfFilter } from '../../src/orientation/vqfFilter.ts';
import type { ImuSample } from '../../src/sensors/sample.ts';

/** Something that turns samples into one attitude each. */
export interface Runner {
  readonly filter: string;
  readonly isDefault: boolean;
  run(samples: readonly ImuSample[]): Quat[];
  /** The same without keeping anything: for the clock. */
  pass(samples: readonly ImuSample[]): void;
}

type Samples = readonly ImuSample[];

/** From the filter's start; the time step is that of the samples themselves. */
function follow<S extends FilterState>(
  f: OrientationFilter<S>,
  samples: Samples,
  take: (q: Quat) => void,
): void {
  const state = f.create();
  let lastS = samples[0]?.timeS ?? 0;
  for (const s of samples) {
    take(f.update(state, s, s.timeS - lastS));
    lastS = s.timeS;
  }
}

export function runFilter<S extends FilterState>(
  f: OrientationFilter<S>,
  samples: Samples,
): Quat[] {
  const out: Quat[] = [];
  follow(f, samples, (q) => out.push(q));
  return out;
}

const nothing = (): void => undefined;

const runnerOf = <S extends FilterState>(f: OrientationFilter<S>): Runner => ({
  filter: f.name,
  isDefault: f.name === defaultFilter.name,
  run: (samples) => runFilter(f, samples),
  pass: (samples) => follow(f, samples, nothing),
});

interface GyroOnlyState extends FilterState {
  readonly q: MutableQuat;
  started: boolean;
}

/** Levelled by the first sample, then nothing but the gyro: a bound that any filter must beat. */
const gyroOnly: OrientationFilter<GyroOnlyState> = {
  name: 'gyro only',
  create: () => ({ q: identity(), started: false, bias: { value: ZERO }, rest: false }),
  update(state, { acc, gyro }, dtS) {
    if (!state.started) setProduct(state.q, upright(acc), IDENTITY);
    else turnBy(state.q, gyro.x * dtS, gyro.y * dtS, gyro.z * dtS);
    state.started = true;
    return { ...state.q };
  },
  afterGap: () => undefined,
};

const track: Runner = {
  filter: `${defaultFilter.name}, in the track`,
  isDefault: false,
  run(samples) {
    const state = createTrack();
    const byTime = new Map<number, Quat>();
    for (const s of samples) stepTrack(state, s, (o) => byTime.set(o.timeS, o.q));
    return samples.map((s) => byTime.get(s.timeS) ?? IDENTITY);
  },
  pass(samples) {
    const state = createTrack();
    for (const s of samples) stepTrack(state, s, nothing);
  },
};

export const RUNNERS: readonly Runner[] = [
  runnerOf(vqfFilter),
  track,
  runnerOf(mahonyFilter),
  runnerOf(madgwickFilter),
  runnerOf(gyroOnly),
];
