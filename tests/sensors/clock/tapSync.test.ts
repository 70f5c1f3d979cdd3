import { describe, expect, it } from 'vitest';
import { gaussian, seededRandom } from '../../../src/math/random.ts';
import { tapSync, type TapTrace } from '../../../src/sensors/clock/tapSync.ts';

/** A knock behind the sensor's own low-pass of about 50 Hz, then some sway of the hand; sampled at 104 Hz. */
const knockAt = (since: number): number =>
  since < -0.05
    ? 0
    : 30 * Math.exp(-((since / 0.008) ** 2)) +
      (since > 0 ? 4 * Math.exp(-since / 0.08) * Math.abs(Math.sin(30 * since)) : 0);

function trace(taps: readonly number[], lateS: number, seed: number, scale = 1): TapTrace {
  const random = seededRandom(seed);
  const timeS: number[] = [];
  const norm: number[] = [];
  for (let t = random() * 0.0096; t < 5; t += 1 / 104) {
    const knock = taps.reduce((sum, at) => sum + knockAt(t - at), 0);
    timeS.push(t + lateS);
    norm.push(scale * knock + 0.1 * gaussian(random));
  }
  return { timeS, norm };
}

const TAPS = [1.2, 1.9, 2.7];

describe('both sensors tapped together three times', () => {
  it('tells the offset of their clocks to 2.5 ms, over 40 pairs of sampling phases', () => {
    const errors = Array.from({ length: 40 }, (_, i) => {
      const offsetMs = -30 + 1.5 * i;
      const sync = tapSync(trace(TAPS, 0, 2 * i + 1), trace(TAPS, offsetMs / 1000, 2 * i + 2, 0.8));
      return sync.ok ? Math.abs(sync.offsetMs - offsetMs) : Infinity;
    });
    expect(Math.max(...errors)).toBeLessThan(2.5);
  });

  it('counts the taps and says how alike the signals are', () => {
    const sync = tapSync(trace(TAPS, 0, 1), trace(TAPS, 0.004, 2));
    expect(sync).toMatchObject({ ok: true, taps: 3 });
    if (sync.ok) expect(sync.correlation).toBeGreaterThan(0.8);
  });

  it('wants three taps, on both', () => {
    expect(tapSync(trace(TAPS.slice(1), 0, 1), trace(TAPS, 0, 2))).toEqual({
      ok: false,
      reason: 'too-few-taps',
    });
  });

  it('does not take taps of different rhythms for the same', () => {
    expect(tapSync(trace([0.7, 2.1, 3.8], 0, 1), trace([1.3, 2.6, 4.4], 0, 2))).toEqual({
      ok: false,
      reason: 'unlike',
    });
  });

  it('wants more than a second of both', () => {
    expect(tapSync({ timeS: [], norm: [] }, trace(TAPS, 0, 2))).toMatchObject({
      reason: 'too-short',
    });
  });
});
