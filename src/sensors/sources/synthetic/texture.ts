import { type Random, uniform } from '../../../math/random.ts';
import { radians } from '../../../math/angle.ts';
import { type Jet, jet } from './channel.ts';
import type { ChannelName } from './coordinates.ts';

/** One of the small movements that nobody can stop: amplitude in rad or m. */
interface Wave {
  readonly amplitude: number;
  /** rad/s */
  readonly pulsation: number;
  readonly phase: number;
}

export type Texture = Partial<Record<ChannelName, readonly Wave[]>>;

/**
 * Amplitudes of one wave each, deg or mm, and its band, Hz. Chosen so that a body "at rest" moves at
 * 0.3-2 deg/s: sway 0.1-0.5 Hz, breathing near 0.25 Hz, physiological tremor 8-12 Hz (bands from memory).
 */
const SWAY = { low: 0.1, high: 0.5, count: 3 };
const BREATH = { low: 0.2, high: 0.3, count: 1 };
const TREMOR = { low: 8, high: 12, count: 2 };

const deg = radians;
const mm = (v: number): number => v / 1000;

function waves(
  random: Random,
  band: { low: number; high: number; count: number },
  amplitude: number,
): Wave[] {
  return Array.from({ length: band.count }, () => ({
    amplitude: amplitude * uniform(random, 0.4, 1),
    pulsation: 2 * Math.PI * uniform(random, band.low, band.high),
    phase: uniform(random, 0, 2 * Math.PI),
  }));
}

export const createTexture = (random: Random): Texture => ({
  turn: waves(random, SWAY, deg(0.15)),
  lateral: waves(random, SWAY, deg(0.12)),
  flexion: [
    ...waves(random, SWAY, deg(0.15)),
    ...waves(random, BREATH, deg(0.2)),
    ...waves(random, TREMOR, deg(0.002)),
  ],
  plane: waves(random, SWAY, deg(0.15)),
  elevation: [...waves(random, SWAY, deg(0.15)), ...waves(random, TREMOR, deg(0.004))],
  externalRotation: [...waves(random, SWAY, deg(0.2)), ...waves(random, TREMOR, deg(0.006))],
  hipX: waves(random, SWAY, mm(3)),
  hipY: waves(random, BREATH, mm(1)),
  hipZ: waves(random, SWAY, mm(3)),
});

export function textureAt(texture: readonly Wave[] | undefined, timeS: number): Jet {
  let [x, v, a] = [0, 0, 0];
  for (const w of texture ?? []) {
    const at = w.pulsation * timeS + w.phase;
    const s = w.amplitude * Math.sin(at);
    x += s;
    v += w.amplitude * w.pulsation * Math.cos(at);
    a -= w.pulsation * w.pulsation * s;
  }
  return jet(x, v, a);
}
