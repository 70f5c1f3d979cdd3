import { describe, expect, it } from 'vitest';
import { degrees } from '../../../../src/math/angle.ts';
import { rootMeanSquare } from '../../../../src/math/stats.ts';
import { type Vec3, angleBetween, norm, scale, vec3 } from '../../../../src/math/vec3.ts';
import {
  type SimulatedSession,
  simulateSession,
} from '../../../../src/sensors/sources/synthetic/index.ts';
import { NOISE_FREE } from '../../../../src/sensors/sources/synthetic/sensorModel.ts';

type Session = SimulatedSession;
type Options = Parameters<typeof simulateSession>[0];
const make = (options: Partial<Options> = {}): Session =>
  simulateSession({ seed: 31, noise: NOISE_FREE, ...options });

/** Readings while the nth step of a type lasted. */
function during(s: Session, sensor: 'chest' | 'trailArm', type: string, nth = 0) {
  const step = s.events.filter((e) => e.type === type)[nth];
  if (!step) throw new Error(`no ${type}`);
  const endS = step.onsetS + step.durationS;
  return s.samples[sensor].filter((x) => x.trueTimeS >= step.onsetS && x.trueTimeS < endS);
}

const mean = (vs: readonly Vec3[]): Vec3 =>
  vs.reduce(
    (a, v) => vec3(a.x + v.x / vs.length, a.y + v.y / vs.length, a.z + v.z / vs.length),
    vec3(0, 0, 0),
  );
const rms = (values: readonly number[]): number => rootMeanSquare(values) ?? NaN;

/** Rates about the segment's own axes in a step, rad/s, from the truth. */
function segmentRates(s: Session, segment: 'thorax' | 'humerus', type: string): Vec3[] {
  const sensor = segment === 'thorax' ? 'chest' : 'trailArm';
  return during(s, sensor, type).map((x) => {
    const at = s.truth.segments(x.trueTimeS);
    return segment === 'thorax' ? at.thoraxRate : at.humerusRate;
  });
}

/** RMS off the Z axis over RMS about it, for X and Y. */
function wobble(rates: readonly Vec3[]): [number, number] {
  const main = rms(rates.map((r) => r.z));
  return [rms(rates.map((r) => r.x)) / main, rms(rates.map((r) => r.y)) / main];
}

/** Movements there and back: pairs of sign changes of the main rate beyond a threshold. */
function count(rates: readonly Vec3[]): number {
  const signs = rates
    .map((r) => r.z)
    .filter((z) => Math.abs(z) > 0.3)
    .map(Math.sign);
  const changes = signs.slice(1).filter((s, i) => s !== signs[i]).length;
  return (changes + 1) / 2;
}

const STEPS = [
  ['thorax', 'calibration-bow', -1],
  ['humerus', 'calibration-armRaise', 1],
] as const;

describe('the calibration movements', () => {
  it.each(STEPS)('turn the %s about its Z in the %s, first %i', (segment, type, sign) => {
    const rates = segmentRates(make(), segment, type);
    expect(count(rates)).toBe(3);
    const first = rates.map((r) => r.z).find((z) => Math.abs(z) > 0.3) ?? 0;
    expect(Math.sign(first)).toBe(sign);
  });

  it.each(STEPS)('wobble off the axis of the %s by a few percent each way', (segment, type) => {
    for (let seed = 0; seed < 30; seed++) {
      for (const ratio of wobble(segmentRates(make({ seed, rateHz: 20 }), segment, type))) {
        expect(ratio).toBeGreaterThan(0.015);
        expect(ratio).toBeLessThan(0.12);
      }
    }
  });

  it('can be two of each, as in older recordings', () => {
    const s = make({ calibrationRepetitions: 2 });
    expect(count(segmentRates(s, 'thorax', 'calibration-bow'))).toBe(2);
    expect(count(segmentRates(s, 'humerus', 'calibration-armRaise'))).toBe(2);
  });

  it('can be short, or left out', () => {
    const end = (s: Session) => (s.events.at(-1)?.onsetS ?? 0) + (s.events.at(-1)?.durationS ?? 0);
    expect(end(make({ calibration: 'short' }))).toBeLessThan(end(make()));
    expect(make({ calibration: 'none' }).events).toEqual([]);
  });

  it('bow by 30-60 deg and raise the arm to shoulder height', () => {
    const s = make();
    const most = (type: string, name: 'flexionDeg' | 'elevationDeg') =>
      Math.max(...during(s, 'chest', type).map((x) => s.truth.angles(x.trueTimeS)[name]));
    expect(most('calibration-bow', 'flexionDeg')).toBeGreaterThan(30);
    expect(most('calibration-bow', 'flexionDeg')).toBeLessThan(60);
    expect(most('calibration-armRaise', 'elevationDeg')).toBeGreaterThan(75);
    expect(most('calibration-armRaise', 'elevationDeg')).toBeLessThan(100);
  });
});

describe('a faulty calibration', () => {
  const good = make();

  it.each([
    ['wobbly-bow', 'thorax', 'calibration-bow'],
    ['wobbly-raise', 'humerus', 'calibration-armRaise'],
  ] as const)('%s has no clear axis', (calibrationFault, segment, type) => {
    const [x, y] = wobble(segmentRates(make({ calibrationFault }), segment, type));
    expect(1 / (1 + x * x + y * y)).toBeLessThan(0.92);
  });

  it('moving-while-still moves in the first stand', () => {
    const s = make({ calibrationFault: 'moving-while-still' });
    const speed = (of: Session) =>
      degrees(rms(during(of, 'chest', 'calibration-stand').map((x) => norm(x.gyro))));
    expect(speed(s)).toBeGreaterThan(8);
    expect(speed(good)).toBeLessThan(2);
  });

  it('swapped labels each sensor as the other', () => {
    const s = make({ calibrationFault: 'swapped' });
    const readings = (of: Session, sensor: 'chest' | 'trailArm') =>
      of.samples[sensor].map((x) => [x.acc, x.gyro]);
    expect(readings(s, 'chest')).toEqual(readings(good, 'trailArm'));
    expect(s.samples.chest.every((x) => x.sensor === 'chest')).toBe(true);
  });

  it.each([
    ['chest-turned-over', 'chest'],
    ['arm-turned-over', 'trailArm'],
  ] as const)('%s sees gravity from the other side after the first stand', (fault, sensor) => {
    const s = make({ calibrationFault: fault });
    const up = (nth: number) => mean(during(s, sensor, 'calibration-stand', nth).map((x) => x.acc));
    expect(degrees(angleBetween(up(0), up(1)))).toBeGreaterThan(170);
  });

  it.each([
    ['chest-gyro-sign', 'chest'],
    ['arm-gyro-sign', 'trailArm'],
  ] as const)('%s turns the sign of every rate of that sensor', (fault, sensor) => {
    const s = make({ calibrationFault: fault });
    const turned = s.samples[sensor].map((x) => scale(x.gyro, -1));
    expect(turned).toEqual(good.samples[sensor].map((x) => scale(x.gyro, 1)));
  });
});
