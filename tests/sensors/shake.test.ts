import { describe, expect, it } from 'vitest';
import { gaussian, seededRandom } from '../../src/math/random.ts';
import { vec3 } from '../../src/math/vec3.ts';
import { createShake, mostShaken, stepShake } from '../../src/sensors/shake.ts';

const random = seededRandom(4);
/** Norms of a sensor at rest, with taps at the given times. */
const play = (taps: readonly number[], seconds: number, norm = 9.81) => {
  const state = createShake();
  for (let t = 0; t < seconds; t += 0.01) {
    const tap = taps.some((at) => Math.abs(t - at) < 0.006) ? 18 : 0;
    stepShake(state, t, vec3(0.05 * gaussian(random), norm + tap, 0.05 * gaussian(random)));
  }
  return state.level;
};

describe('telling by a tap which sensor is meant', () => {
  it('names the one that was tapped just now', () => {
    expect(
      mostShaken(
        new Map([
          ['a', play([], 5)],
          ['b', play([4.8], 5)],
        ]),
      ),
    ).toBe('b');
  });

  it('names none when all lie still, even one whose rest reads 8 % wrong', () => {
    expect(
      mostShaken(
        new Map([
          ['a', play([], 5)],
          ['b', play([], 5, 10.6)],
        ]),
      ),
    ).toBeNull();
  });

  it('names none when both are shaken together', () => {
    expect(
      mostShaken(
        new Map([
          ['a', play([4.8], 5)],
          ['b', play([4.82], 5)],
        ]),
      ),
    ).toBeNull();
  });

  it('forgets a tap within seconds', () => {
    expect(
      mostShaken(
        new Map([
          ['a', play([1], 5)],
          ['b', play([], 5)],
        ]),
      ),
    ).toBeNull();
  });

  it('is not misled by readings that are not finite', () => {
    const state = createShake();
    stepShake(state, 0, vec3(NaN, 0, 0));
    stepShake(state, NaN, vec3(0, 9.81, 0));
    stepShake(state, 0.01, vec3(0, 9.81, 0));
    expect(state).toEqual({ level: 0, timeS: 0.01, restNorm: expect.closeTo(9.81, 9) as number });
  });
});
