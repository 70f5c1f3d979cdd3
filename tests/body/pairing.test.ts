import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type SensorPair,
  createPairing,
  flushPairing,
  pairArm,
  pairChest,
} from '../../src/body/pairing.ts';
import { aboutY } from '../../src/math/quat.ts';
import type { Orientation } from '../../src/orientation/orientation.ts';

/** Turns evenly about the vertical: the partner's angle says which instant it is of. */
const at = (timeS: number): Orientation => ({
  timeS,
  q: aboutY(timeS),
  gyro: { x: 0, y: timeS, z: 0 },
  acc: { x: 0, y: 9.81, z: 0 },
  rest: false,
  interpolated: false,
  afterGap: false,
  saturated: false,
});

const CHEST = Array.from({ length: 120 }, (_, k) => 0.1 + k / 100);
const ARM = Array.from({ length: 140 }, (_, k) => 0.003 + k / 104);

/** Both sensors in the order in which their packets come, each delayed by its own delays (s). */
function pairsOf(chestDelays: readonly number[], armDelays: readonly number[]): SensorPair[] {
  let latest = 0;
  const arrivals = (times: readonly number[], delays: readonly number[], sensor: string) => {
    latest = 0;
    return times.map((timeS, k) => {
      latest = Math.max(latest, timeS + (delays[k % delays.length] ?? 0));
      return { timeS, sensor, arrivalS: latest };
    });
  };
  const all = [...arrivals(CHEST, chestDelays, 'chest'), ...arrivals(ARM, armDelays, 'trailArm')];
  const pairs: SensorPair[] = [];
  const state = createPairing();
  for (const { timeS, sensor } of all.sort((a, b) => a.arrivalS - b.arrivalS))
    (sensor === 'chest' ? pairChest : pairArm)(state, at(timeS), (p) => pairs.push(p));
  flushPairing(state, (p) => pairs.push(p));
  return pairs;
}

describe('The arm at the chest’s instants', () => {
  const delays = fc.array(fc.double({ min: 0, max: 0.4, noNaN: true }), {
    minLength: 1,
    maxLength: 40,
  });

  it('is the same however the packets of the two sensors interleave', () => {
    fc.assert(
      fc.property(delays, delays, (chest, arm) => {
        expect(pairsOf(chest, arm)).toEqual(pairsOf([0], [0]));
      }),
      { numRuns: 200 },
    );
  });

  it('is of that very instant, also where the arm’s packets come first', () => {
    for (const pair of pairsOf([0.3], [0])) expect(pair.arm.gyro.y).toBeCloseTo(pair.timeS, 12);
  });

  it('is said to be missing where it is more than a second late', () => {
    const state = createPairing();
    const pairs: SensorPair[] = [];
    pairArm(state, at(0), (p) => pairs.push(p));
    for (const t of CHEST) pairChest(state, at(t), (p) => pairs.push(p));
    expect(pairs.length).toBeGreaterThan(0);
    expect(pairs.every((p) => p.gap)).toBe(true);
  });

  it('keeps no more than a few seconds of an arm whose chest is silent', () => {
    const state = createPairing();
    for (let k = 0; k < 2000; k++) pairArm(state, at(k / 100), () => {});
    expect(state.arms.length).toBeLessThan(250);
  });
});
