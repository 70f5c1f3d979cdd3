import { describe, expect, it } from 'vitest';
import { STANDARD_GRAVITY, freeFall } from '../../src/math/gravity.ts';
import { OVER_LEAKAGE, onsetTime } from '../../src/swings/onset.ts';
import { createShock, stepShock, strongestShock } from '../../src/swings/shock.ts';
import { createStillness, stepStillness } from '../../src/swings/stillness.ts';
import { gaussian, seededRandom } from '../../src/math/random.ts';

const times = (fromS: number, toS: number, rateHz = 100): number[] =>
  Array.from({ length: Math.round((toS - fromS) * rateHz) + 1 }, (_, i) => fromS + i / rateHz);

describe('free fall', () => {
  // Source: d = g t^2 / 2 with g = 9.80665 m/s^2 (3rd CGPM, 1901); table worked to the millimetre
  it.each([
    [0.1, 0.049],
    [0.2, 0.196],
    [0.3, 0.441],
    [0.4, 0.785],
    [0.5, 1.226],
  ])('%f s fall %f m', (s, m) => {
    expect(freeFall(s)).toBeCloseTo(m, 3);
  });
  it('uses standard gravity', () => expect(STANDARD_GRAVITY).toBe(9.80665));
});

describe('onset of a movement', () => {
  // Source of the truth: minimum-jerk speed (Flash & Hogan 1985, J Neurosci 5:1688), onset known exactly
  const speed = (t: number, onset: number, T: number) => {
    const s = Math.min(1, Math.max(0, (t - onset) / T));
    return (150 / 1.875) * 30 * s * s * (1 - s) * (1 - s);
  };
  it.each([0.3, 0.45, 0.6, 0.85, 1.2])('is found within 5 ms for a movement of %f s', (T) => {
    for (const onset of [1.0, 1.003, 1.0071]) {
      const t = times(0.5, 2.5);
      const v = t.map((x) => speed(x, onset, T));
      const peak = v.indexOf(Math.max(...v));
      expect(Math.abs((onsetTime(t, v, peak, 0) ?? 0) - onset)).toBeLessThan(0.005);
      expect(Math.abs((onsetTime(t, v, peak, 0, OVER_LEAKAGE) ?? 0) - onset)).toBeLessThan(0.008);
    }
  });
  it('is found under the noise of a gyroscope', () => {
    const random = seededRandom(4);
    const t = times(0.5, 2.5);
    const v = t.map((x) => Math.abs(speed(x, 1, 0.6) + 0.8 * gaussian(random)));
    expect(Math.abs((onsetTime(t, v, v.indexOf(Math.max(...v)), 0) ?? 0) - 1)).toBeLessThan(0.02);
  });
  it('is null where nothing moves', () => {
    expect(onsetTime([0, 1, 2], [0, 0, 0], 1, 0)).toBeNull();
  });
});

describe('a shock at the arm', () => {
  const run = (acc: (t: number) => number, rateHz = 100, lost = (_t: number) => false) => {
    const random = seededRandom(9);
    const state = createShock();
    const noise = () => 0.03 * gaussian(random);
    const there = times(0, 1, rateHz).filter((t) => !lost(t));
    return there.map((t) =>
      stepShock(state, t, { x: 9.8 + acc(t) + noise(), y: noise(), z: noise() }),
    );
  };
  /** Large smooth movement: 12 m/s^2 at 1.5 Hz. */
  const movement = (t: number) => 12 * Math.sin(2 * Math.PI * 1.5 * t);
  /** A push of 25 ms with a rebound of half its size. */
  const blow = (t: number, at: number, size: number) => {
    const s = (t - at) / 0.025;
    if (s <= 0 || s > 2) return 0;
    return Math.sin(Math.PI * s) * size * (s < 1 ? 1 : 0.5);
  };

  it.each([100, 104])(
    'of 1.5 m/s^2 is found within 15 ms under a movement eight times as large (%i Hz)',
    (rateHz) => {
      for (const at of [0.5, 0.5032, 0.5078]) {
        const shock = strongestShock(
          run((t) => movement(t) + blow(t, at, 1.5), rateHz),
          0.2,
          0.9,
        );
        expect(shock).not.toBeNull();
        expect(Math.abs((shock?.timeS ?? 0) - at)).toBeLessThan(0.015);
      }
    },
  );
  it('is never invented from a smooth movement', () => {
    expect(strongestShock(run(movement), 0.2, 0.9)).toBeNull();
  });
  it.each([1, 2, 5, 9, 20])('is never invented where %i readings are missing', (n) => {
    for (const from of [0.3, 0.42, 0.5, 0.61])
      expect(
        strongestShock(
          run(movement, 100, (t) => t > from && t < from + n / 100),
          0.2,
          0.9,
        ),
      ).toBeNull();
  });
  it('is found though the reading before it is missing', () => {
    const lost = (t: number) => Math.abs(t - 0.49) < 0.002;
    const shock = strongestShock(
      run((t) => movement(t) + blow(t, 0.5, 2), 100, lost),
      0.2,
      0.9,
    );
    expect(Math.abs((shock?.timeS ?? 0) - 0.5)).toBeLessThan(0.02);
  });
  it('stands out with more confidence the larger it is', () => {
    const size = (s: number) =>
      strongestShock(
        run((t) => blow(t, 0.5, s)),
        0.2,
        0.9,
      )?.confidence ?? 0;
    expect(size(1)).toBeGreaterThan(size(0.7));
  });
  it('has a size though readings come twice or late', () => {
    const state = createShock();
    const sizes = [0, 0.01, 0.02, 0.03, 0.03, 0.02, 0.04, 0.05].map(
      (t) => stepShock(state, t, { x: 9.8, y: t, z: 0 }).size,
    );
    for (const size of sizes) expect(size).toBeCloseTo(0, 9);
  });
  it('is null for no samples', () => expect(strongestShock([], 0, 1)).toBeNull());
});

describe('stillness', () => {
  it('begins 0.15 s after both segments slow down and ends at once when one moves', () => {
    const s = createStillness();
    const seen = times(0, 2).map((t) => stepStillness(s, t, t < 0.5 || t > 1.5 ? 60 : 3, 5));
    const first = seen.indexOf(true) / 100;
    expect(first).toBeGreaterThan(0.6);
    expect(first).toBeLessThan(0.75);
    expect(seen.lastIndexOf(true) / 100).toBeLessThan(1.56);
  });
  it('holds on through a tremor that would not have let it begin', () => {
    const s = createStillness();
    const still = times(0, 1.5).map((t) => stepStillness(s, t, t < 0.7 ? 4 : 14, 5));
    expect(still.at(-1)).toBe(true);
    const fresh = createStillness();
    expect(times(0, 1).some((t) => stepStillness(fresh, t, 14, 5))).toBe(false);
  });
});
