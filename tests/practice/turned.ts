import { radians } from '../../src/math/angle.ts';
import { fromRotationVector, rotate } from '../../src/math/quat.ts';
import { type Vec3, scale } from '../../src/math/vec3.ts';
import type { SensorRole } from '../../src/sensors/sample.ts';
import type { SensorSource } from '../../src/sensors/sources/source.ts';

export interface Turn {
  readonly sensor: SensorRole;
  /** Sensor frame, unit. */
  readonly axis: Vec3;
  readonly deg: number;
}

/** The same source with one sensor turned in its strap. */
export function turned(source: SensorSource, turn: Turn): SensorSource {
  const q = fromRotationVector(scale(turn.axis, radians(turn.deg)));
  return {
    kind: source.kind,
    simulated: source.simulated,
    stop: () => source.stop(),
    ask: (step) => source.ask?.(step),
    start: (listener) =>
      source.start({
        ...listener,
        event: (e) => listener.event(e),
        link: (l) => listener.link(l),
        end: (e) => listener.end(e),
        samples: (batch) =>
          listener.samples(
            batch.map((s) =>
              s.sensor === turn.sensor
                ? { ...s, acc: rotate(q, s.acc), gyro: rotate(q, s.gyro) }
                : s,
            ),
          ),
      }),
  };
}
