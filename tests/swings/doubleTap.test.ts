import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { gaussian, seededRandom } from '../../src/math/random.ts';
import { vec3 } from '../../src/math/vec3.ts';
import type { ImuSample } from '../../src/sensors/sample.ts';
import { simulateSession } from '../../src/sensors/sources/synthetic/index.ts';
import { type DoubleTap, createDoubleTap, stepDoubleTap } from '../../src/swings/doubleTap.ts';

interface Made {
  /** Start s and size m/s^2 of what each sensor feels, 20 ms long. */
  readonly chest?: readonly (readonly [number, number])[];
  readonly arm?: readonly (readonly [number, number])[];
  /** Of the trunk, deg/s. */
  readonly turning?: number;
  readonly knockS?: number;
}

/** Five seconds of two sensors at 100 Hz, at rest but for what is asked. */
function made({ chest = [], arm = [], turning = 2, knockS = 0.02 }: Made): ImuSample[] {
  const random = seededRandom(4);
  const felt = (knocks: readonly (readonly [number, number])[], t: number): number =>
    knocks.find(([at]) => t >= at && t < at + knockS)?.[1] ?? 0;
  return Array.from({ length: 1000 }, (_, i) => {
    const sensor = i % 2 === 0 ? 'chest' : 'trailArm';
    const timeS = Math.floor(i / 2) / 100;
    const push = felt(sensor === 'chest' ? chest : arm, timeS);
    return {
      sensor,
      timeS,
      acc: vec3(-push, 9.81 + 0.05 * gaussian(random), 0.05 * gaussian(random)),
      gyro: vec3(0, (turning * Math.PI) / 180, 0),
      deviceTimeS: timeS,
      arrivalTimeS: timeS,
      saturated: false,
    };
  });
}

function heard(samples: readonly ImuSample[]): DoubleTap[] {
  const state = createDoubleTap();
  return samples.flatMap((sample) => stepDoubleTap(state, sample) ?? []);
}

const TWO = [
  [2, 15],
  [2.3, 12],
] as const;

describe('a double tap on the chest sensor', () => {
  it('is two knocks of the chest alone, the trunk still', () => {
    const [tap, ...more] = heard(made({ chest: TWO }));
    expect(more).toEqual([]);
    expect(tap?.firstS).toBeCloseTo(2, 1);
    expect(tap?.secondS).toBeCloseTo(2.3, 1);
  });

  it.each<[string, Made]>([
    ['one tap', { chest: [[2, 15]] }],
    ['three', { chest: [...TWO, [2.6, 14]] }],
    ['two that are far apart', { chest: [TWO[0], [2.7, 15]] }],
    ['two that are one', { chest: [TWO[0], [2.09, 15]] }],
    ['a step, small and felt by the arm', { chest: TWO, arm: TWO }],
    ['a blow of which the arm feels more', { chest: TWO, arm: TWO.map(([t, s]) => [t, 3 * s]) }],
    ['taps of which one is far weaker', { chest: [TWO[0], [2.3, 90]] }],
    ['small ones', { chest: TWO.map(([t]) => [t, 2]) }],
    ['pushes, not knocks', { chest: TWO.map(([t]) => [t, 15]), knockS: 0.13 }],
    ['knocks of a trunk that turns', { chest: TWO, turning: 40 }],
    ['nothing', {}],
  ])('is not %s', (_, what) => {
    expect(heard(made(what))).toEqual([]);
  });

  it('is not told while the arm’s sensor is silent', () => {
    const late = made({ chest: TWO }).filter((s) => s.sensor === 'chest' || s.timeS < 1.9);
    expect(heard(late)).toEqual([]);
  });

  it('is the same with the sensors’ packets in any order, and from a state that went through JSON', () => {
    const all = made({ chest: TWO });
    const packets = (sensor: string, of: number): ImuSample[][] => {
      const own = all.filter((s) => s.sensor === sensor);
      return Array.from({ length: Math.ceil(own.length / of) }, (_, i) =>
        own.slice(i * of, (i + 1) * of),
      );
    };
    const mixed = [...packets('chest', 7), ...packets('trailArm', 23)]
      .sort((a, b) => a.at(-1)!.timeS - b.at(-1)!.timeS)
      .flat();
    expect(heard(mixed)).toEqual(heard(all));
    let state = createDoubleTap();
    const resumed = all.flatMap((sample) => {
      state = JSON.parse(JSON.stringify(state));
      return stepDoubleTap(state, sample) ?? [];
    });
    expect(resumed).toEqual(heard(all));
    expect(JSON.stringify(state).length).toBeLessThan(40_000);
  });

  it('is found where a simulated student taps, and nowhere else', () => {
    const script = 'taps idle:4 taps walk taps r taps b waggle p taps tee';
    const { packets, truth } = simulateSession({ seed: 5, script });
    const found = heard(packets.flatMap(({ samples }) => samples));
    const wanted = truth.distractors.filter(({ kind }) => kind === 'taps');
    expect(wanted).toHaveLength(5);
    expect(found).toHaveLength(5);
    found.forEach((tap, i) => {
      expect(tap.firstS).toBeGreaterThan(wanted[i]!.startS);
      expect(tap.secondS).toBeLessThan(wanted[i]!.endS);
    });
  });
});

const REAL = join(import.meta.dirname, '../../../shared/datasets/fullbody-imu-example');
const present = existsSync(REAL);
if (!present) console.log('skipped: no recording of a real trunk and arm at ../shared/datasets');

/** One person walking about and moving the arms, 100 s (see the README there): one sensor of the trunk, one of an arm. */
function realSamples(trunk: string, arm: string): ImuSample[] {
  const of = (file: string, sensor: ImuSample['sensor']): ImuSample[] =>
    readFileSync(join(REAL, `${file}.csv`), 'utf8')
      .trim()
      .split('\n')
      .slice(1)
      .map((line) => {
        const [timeS = 0, gx = 0, gy = 0, gz = 0, ax = 0, ay = 0, az = 0] = line
          .split(',')
          .map(Number);
        const about = { deviceTimeS: timeS, arrivalTimeS: null, saturated: false };
        return { sensor, timeS, gyro: vec3(gx, gy, gz), acc: vec3(ax, ay, az), ...about };
      });
  return [...of(trunk, 'chest'), ...of(arm, 'trailArm')].sort((a, b) => a.timeS - b.timeS);
}

describe.skipIf(!present)('a real trunk and arm', () => {
  it.each(['upper_back', 'lower_back', 'hip'])('make no double tap in 100 s: %s', (trunk) => {
    for (const arm of ['upper_arm_right', 'upper_arm_left']) {
      const samples = realSamples(trunk, arm);
      expect(samples.length).toBe(20_000);
      expect(heard(samples), arm).toEqual([]);
    }
  });
});
