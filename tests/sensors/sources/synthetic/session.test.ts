import { describe, expect, it } from 'vitest';
import { norm, subtract, vec3 } from '../../../../src/math/vec3.ts';
import { mean, rootMeanSquare } from '../../../../src/math/stats.ts';
import { degrees, radians } from '../../../../src/math/angle.ts';
import { simulateSession } from '../../../../src/sensors/sources/synthetic/index.ts';
import { NOISE_FREE } from '../../../../src/sensors/sources/synthetic/sensorModel.ts';
import { PERFECT_RADIO } from '../../../../src/sensors/sources/synthetic/radio.ts';
import type { SimulatedSample } from '../../../../src/sensors/sources/synthetic/device.ts';

const SENSORS = ['chest', 'trailArm'] as const;
const mixed = { seed: 11, script: 'r b' };
const within = (samples: readonly SimulatedSample[], fromS: number, toS: number) =>
  samples.filter((s) => s.trueTimeS >= fromS && s.trueTimeS < toS);

describe('a simulated session', () => {
  const session = simulateSession(mixed);

  it('is the same for the same seed and options, and another for another seed', () => {
    const again = simulateSession(mixed);
    expect(again.packets).toEqual(session.packets);
    expect(again.truth.repetitions).toEqual(session.truth.repetitions);
    const other = simulateSession({ ...mixed, seed: 12 });
    expect(other.truth.repetitions[0]?.startS).not.toBe(session.truth.repetitions[0]?.startS);
  });

  it('moves the same body whatever the sensors and the radio do', () => {
    const plain = simulateSession({
      ...mixed,
      noise: NOISE_FREE,
      radio: PERFECT_RADIO,
      rateHz: 50,
    });
    expect(plain.truth.repetitions).toEqual(session.truth.repetitions);
    expect(plain.events).toEqual(session.events);
  });

  it('mirrors the readings for the other hand and nothing else', () => {
    const left = simulateSession({ ...mixed, hand: 'left' });
    for (const sensor of SENSORS) {
      const mirrored = left.samples[sensor].map((s) => ({
        ...s,
        acc: vec3(s.acc.x, s.acc.y, -s.acc.z),
        gyro: vec3(-s.gyro.x, -s.gyro.y, s.gyro.z),
      }));
      expect(mirrored).toEqual(session.samples[sensor]);
    }
    expect(left.truth.repetitions).toEqual(session.truth.repetitions);
  });

  it('holds the calibration steps in order, each within the session', () => {
    expect(session.events.map((e) => e.type)).toEqual([
      'calibration-stand',
      'calibration-bow',
      'calibration-armRaise',
      'calibration-stand',
      'address-reference',
    ]);
    expect(session.events.map((e) => Math.round(e.durationS))).toEqual([
      3,
      expect.any(Number),
      expect.any(Number),
      2,
      2,
    ]);
    session.events.reduce((end, e) => {
      expect(e.onsetS).toBeGreaterThan(end);
      return e.onsetS + e.durationS;
    }, 0);
  });

  it.each(SENSORS)('%s reads g at rest, within its noise and offset', (sensor) => {
    const quiet = simulateSession({ seed: 3, noise: { ...NOISE_FREE, accDensity: 0.0015 } });
    const stand = quiet.events[0];
    if (!stand) throw new Error('no stand');
    const at = within(quiet.samples[sensor], stand.onsetS, stand.onsetS + stand.durationS);
    const g = mean(at.map((s) => norm(s.acc)));
    expect(Math.abs((g ?? 0) - 9.80665)).toBeLessThan(0.01);
  });

  it('keeps the body still where a step asks for it: far under the limits of stillness', () => {
    for (const event of session.events.filter((e) => /stand|address/.test(e.type))) {
      for (const [sensor, limit] of [
        ['chest', 3],
        ['trailArm', 5],
      ] as const) {
        const rates = within(
          simulateSession({ ...mixed, noise: NOISE_FREE }).samples[sensor],
          event.onsetS,
          event.onsetS + event.durationS,
        ).map((s) => degrees(norm(s.gyro)));
        expect(rootMeanSquare(rates)).toBeLessThan(limit);
        expect(rootMeanSquare(rates)).toBeGreaterThan(0.1);
      }
    }
  });
});

describe('the sensors', () => {
  const session = simulateSession({ seed: 4, script: 'r', rateHz: { chest: 100, trailArm: 104 } });

  it('sample each at its own rate on its own clock', () => {
    for (const [sensor, rate] of [
      ['chest', 100],
      ['trailArm', 104],
    ] as const) {
      const s = session.samples[sensor];
      const steps = s.slice(1).map((b, i) => (b.deviceTimeS ?? 0) - (s[i]?.deviceTimeS ?? 0));
      const step = steps.sort((a, b) => a - b)[steps.length >> 1];
      expect(step).toBeCloseTo(1 / rate, 5);
    }
    expect(session.samples.chest[0]?.deviceTimeS).not.toBeCloseTo(
      session.samples.trailArm[0]?.deviceTimeS ?? 0,
      1,
    );
  });

  it('run fast or slow by their skew', () => {
    const skewed = simulateSession({
      seed: 4,
      script: 'r',
      skewPpm: { chest: 500, trailArm: -200 },
    });
    for (const [sensor, ppm] of [
      ['chest', 500],
      ['trailArm', -200],
    ] as const) {
      const s = skewed.samples[sensor];
      const [a, b] = [s[0], s.at(-1)];
      const device = (b?.deviceTimeS ?? 0) - (a?.deviceTimeS ?? 0);
      const truth = (b?.trueTimeS ?? 0) - (a?.trueTimeS ?? 0);
      expect((device / truth - 1) * 1e6).toBeCloseTo(ppm, 0);
    }
  });

  it('give whole counts of int16 at 16 g and 2000 deg/s', () => {
    for (const s of session.samples.chest.slice(0, 500)) {
      for (const v of [s.acc.x, s.acc.y, s.acc.z]) {
        const counts = v / ((16 * 9.80665) / 32768);
        expect(Math.abs(counts - Math.round(counts))).toBeLessThan(1e-6);
      }
      for (const v of [s.gyro.x, s.gyro.y, s.gyro.z]) {
        const counts = v / (radians(2000) / 32768);
        expect(Math.abs(counts - Math.round(counts))).toBeLessThan(1e-6);
      }
    }
  });

  it('flag and clip what exceeds their range', () => {
    const narrow = simulateSession({ seed: 4, script: 'b', noise: { gyroRangeDps: 500 } });
    const clipped = narrow.samples.chest.filter((s) => s.saturated);
    expect(clipped.length).toBeGreaterThan(5);
    const largest = Math.max(
      ...clipped.map((s) => Math.max(Math.abs(s.gyro.x), Math.abs(s.gyro.y), Math.abs(s.gyro.z))),
    );
    expect(degrees(largest)).toBeCloseTo((500 * 32767) / 32768, 6);
    expect(simulateSession({ seed: 4, script: 'b' }).samples.chest.some((s) => s.saturated)).toBe(
      false,
    );
  });

  it('have the noise and the offset that they are asked for', () => {
    const noisy = simulateSession({ seed: 9, calibration: 'none', script: 'idle:60' });
    const clean = simulateSession({
      seed: 9,
      calibration: 'none',
      script: 'idle:60',
      noise: NOISE_FREE,
    });
    const byTime = new Map(clean.samples.chest.map((s) => [s.deviceTimeS, s]));
    const errors = noisy.samples.chest.map((s) =>
      degrees(s.gyro.x - (byTime.get(s.deviceTimeS)?.gyro.x ?? NaN)),
    );
    const offset = mean(errors) ?? NaN;
    const spread = rootMeanSquare(errors.map((e) => e - offset)) ?? NaN;
    // 0.008 deg/s/sqrt(Hz) over 50 Hz, and a count of 0.061 deg/s
    const expected = Math.hypot(0.008 * Math.sqrt(50), 2000 / 32768 / Math.sqrt(12));
    expect(Math.abs(offset)).toBeLessThan(4 * 0.8);
    expect(spread / expected).toBeGreaterThan(0.85);
    expect(spread / expected).toBeLessThan(1.3);
  });

  it('feel a catch at the arm as a blow of 1 to 6 m/s^2 and a ball as a much larger one', () => {
    const clean = simulateSession({
      seed: 21,
      script: 'r*4 b*4',
      noise: NOISE_FREE,
      rateHz: 1000,
      radio: PERFECT_RADIO,
    });
    for (const r of clean.truth.repetitions) {
      const at = r.kind === 'ball' ? r.impactS : r.kind === 'rehearsal' ? r.catchS : null;
      if (at === null) throw new Error('no blow');
      // Before and 12 ms after: the smooth movement changes little, the blow shows.
      const before = within(clean.samples.trailArm, at - 0.002, at)[0];
      const peak = Math.max(
        ...within(clean.samples.trailArm, at, at + 0.012).map((s) =>
          norm(subtract(s.acc, before?.acc ?? s.acc)),
        ),
      );
      const [low, high] = r.kind === 'ball' ? [15, 80] : [0.8, 9];
      expect(peak).toBeGreaterThan(low);
      expect(peak).toBeLessThan(high);
    }
  });
});

describe('the radio', () => {
  const session = simulateSession({
    seed: 6,
    script: 'r*3',
    radio: { lostShare: 0.05, longestRun: 3 },
  });

  it('delivers packets in order, never before they are taken, with a delay that only adds', () => {
    for (const sensor of SENSORS) {
      const packets = session.packets.filter((p) => p.sensor === sensor);
      packets.slice(1).forEach((p, i) => {
        expect(p.arrivalTimeS).toBeGreaterThanOrEqual(packets[i]?.arrivalTimeS ?? 0);
      });
      const delays = packets.map((p) => p.arrivalTimeS - (p.samples.at(-1)?.trueTimeS ?? 0));
      expect(Math.min(...delays)).toBeGreaterThan(0.001);
      expect(Math.min(...delays)).toBeLessThan(0.005);
      expect(Math.max(...delays)).toBeLessThan(0.3);
    }
    expect(session.packets.map((p) => p.arrivalTimeS)).toEqual(
      session.packets.map((p) => p.arrivalTimeS).sort((a, b) => a - b),
    );
  });

  it('loses the asked share in runs of whole packets', () => {
    const s = session.samples.chest;
    const missing = s
      .slice(1)
      .map((b, i) => Math.round(((b.deviceTimeS ?? 0) - (s[i]?.deviceTimeS ?? 0)) * 100) - 1)
      .filter((n) => n > 0);
    const lost = missing.reduce((a, b) => a + b, 0);
    const share = lost / (lost + s.length);
    expect(share).toBeGreaterThan(0.025);
    expect(share).toBeLessThan(0.08);
    expect(missing.every((n) => n % 2 === 0)).toBe(true);
    expect(Math.max(...missing)).toBeGreaterThan(2);
  });

  it('is silent through a gap, for one sensor alone', () => {
    const gaps = [{ fromS: 40, toS: 41.5 }];
    const cut = simulateSession({
      seed: 6,
      script: 'r*2',
      radio: { chest: { gaps }, trailArm: {} },
    });
    expect(within(cut.samples.chest, 40.05, 41.45)).toEqual([]);
    expect(within(cut.samples.trailArm, 40.05, 41.45).length).toBeGreaterThan(100);
  });

  it('lets the host place every sample within a few milliseconds of the truth', () => {
    for (const s of session.samples.trailArm.filter((x) => x.trueTimeS > 20)) {
      expect(Math.abs(s.timeS - s.trueTimeS)).toBeLessThan(0.006);
    }
  });
});

describe('options that cannot be simulated', () => {
  it.each([
    [{ seed: -1 }, 'seed'],
    [{ seed: NaN }, 'seed'],
    [{ seed: 1, rateHz: 0 }, 'rateHz'],
    [{ seed: 1, radio: { lostShare: 2 } }, 'lostShare'],
    [{ seed: 1, skewPpm: { chest: Infinity, trailArm: 0 } }, 'skewPpm'],
  ])('%j are refused by name', (options, name) => {
    expect(() => simulateSession(options)).toThrow(name);
  });
});
