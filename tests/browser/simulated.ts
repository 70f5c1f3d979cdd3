import { warpedTimers } from '../../src/main/warp.ts';
import type { SensorRole } from '../../src/sensors/sample.ts';
import type { SensorSource } from '../../src/sensors/sources/source.ts';
import { SyntheticSource, type Timers } from '../../src/sensors/sources/synthetic/index.ts';

const HOST: Timers = {
  now: () => performance.now(),
  after: (ms, callback) => {
    const timer = setTimeout(callback, ms);
    return () => clearTimeout(timer);
  },
};

/** Plays `script` as a simulated student would, then goes on for ever; the calibration takes two seconds. */
export const simulated = (
  script: string,
  hand: 'left' | 'right' = 'right',
  seed = 3,
  speed = 1,
): SensorSource =>
  new SyntheticSource({
    seed,
    script,
    hand,
    speed,
    endless: true,
    timers: warpedTimers(HOST, 42_000 / speed, 20),
  });

/** The same source, of which a sensor can be made silent and heard again, as when its link is lost. */
export function withSilence(source: SensorSource): {
  readonly source: SensorSource;
  readonly silence: (sensor: SensorRole, on: boolean) => void;
} {
  const silent = new Set<SensorRole>();
  return {
    source: {
      kind: source.kind,
      simulated: source.simulated,
      start: (listener) =>
        source.start({
          ...listener,
          samples: (batch) => {
            if (!batch.some(({ sensor }) => silent.has(sensor))) listener.samples(batch);
          },
        }),
      stop: () => source.stop(),
    },
    silence: (sensor, on) => void (on ? silent.add(sensor) : silent.delete(sensor)),
  };
}
