import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { finish, result, start, step } from '../../src/analysis/analysis.ts';
import type { AnalysisInput, AnalysisOutput } from '../../src/analysis/contract.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { type Quat, fromRotationVector, rotate } from '../../src/math/quat.ts';
import { type Vec3 } from '../../src/math/vec3.ts';
import type { ImuSample, SensorRole } from '../../src/sensors/sample.ts';
import { seededRandom } from '../../src/math/random.ts';
import { analyse, inputsOf } from '../analysis/simulated.ts';

const inputs = inputsOf({ seed: 51, script: 'r b r:losing-rotation' });
const whole = analyse(inputs).result;

const mapSamples = (f: (s: ImuSample) => ImuSample): AnalysisInput[] =>
  inputs.map((i) => (i.kind === 'sample' ? { kind: 'sample', sample: f(i.sample) } : i));

/** Every number of a result, by its path. */
function numbers(value: unknown, path = ''): [string, number | null][] {
  if (value === null || typeof value === 'number') return [[path, value]];
  if (typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([k, v]) => numbers(v, `${path}.${k}`));
}

function expectAlike(a: unknown, b: unknown, tolerance: number): void {
  const [x, y] = [numbers(a), numbers(b)];
  expect(x.map(([k]) => k)).toEqual(y.map(([k]) => k));
  x.forEach(([k, v], i) => {
    const w = y[i]?.[1] ?? null;
    if (v === null || w === null) expect(v, k).toBe(w);
    else expect(Math.abs(v - w), k).toBeLessThanOrEqual(tolerance);
  });
}

describe('the whole chain', () => {
  it('has three repetitions here', () => {
    expect(whole.repetitions.map((r) => r.kind)).toEqual(['rehearsal', 'ball', 'rehearsal']);
  });

  // Trial opensim-org/opensim-core#2781: calibration depended on the way the person faces
  it('does not care how the sensors are mounted, so neither how the room lies (to 1e-6)', () => {
    const turn: Record<SensorRole, Quat> = {
      chest: fromRotationVector({ x: 1.1, y: -2, z: 0.4 }),
      trailArm: fromRotationVector({ x: -0.3, y: 0.8, z: 2.2 }),
      club: fromRotationVector({ x: 0, y: 0, z: 0 }),
    };
    const by = (s: ImuSample, v: Vec3) => rotate(turn[s.sensor], v);
    const remounted = mapSamples((s) => ({ ...s, acc: by(s, s.acc), gyro: by(s, s.gyro) }));
    expectAlike(analyse(remounted).result.repetitions, whole.repetitions, 1e-6);
  });

  it('measures the mirror image of a left-handed golfer the same (to 1e-9)', () => {
    const mirrored = mapSamples((s) => ({
      ...s,
      acc: { x: s.acc.x, y: s.acc.y, z: -s.acc.z },
      gyro: { x: -s.gyro.x, y: -s.gyro.y, z: s.gyro.z },
    }));
    expectAlike(analyse(mirrored, { hand: 'left' }).result.repetitions, whole.repetitions, 1e-9);
  });

  it('gives the same to the bit however the two sensors’ packets interleave', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const shuffled = interleave(inputs, seed);
        expect(analyse(shuffled).result.repetitions).toEqual(whole.repetitions);
      }),
      { numRuns: 6 },
    );
  });

  it('cut anywhere and resumed from JSON equals the whole run', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: inputs.length }), (cut) => {
        let state = start({ hand: 'right', plan: DEFAULT_PLAN });
        const outputs: AnalysisOutput[] = [];
        const emit = (o: AnalysisOutput) => outputs.push(o);
        inputs.forEach((input, i) => {
          if (i === cut) state = JSON.parse(JSON.stringify(state));
          step(state, input, emit);
        });
        finish(state, emit);
        expect(result(state, 'test')).toEqual(whole);
      }),
      { numRuns: 8 },
    );
  });

  it('adds nothing to a run by showing every frame', () => {
    const shown = analyse(inputs, { emitFrames: true });
    expect(shown.result).toEqual(whole);
    const frames = shown.outputs.filter((o) => o.kind === 'frame');
    expect(frames.length).toBeGreaterThan(3000);
    for (const [k, v] of frames.flatMap((f) => numbers(f)))
      if (v !== null) expect(v, k).not.toBeNaN();
  });

  const strange = fc.oneof(
    fc.constantFrom(0, NaN, Infinity, -Infinity, 156.9, -34.9, 1e308, 5e-324),
    fc.double({ min: -200, max: 200 }),
  );
  it('never shows a number that is none, whatever comes in', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(inputs.length - 1), strange, fc.nat(6)), { maxLength: 60 }),
        (hits) => {
          const broken = [...inputs.slice(0, 9000)];
          for (const [at, value, part] of hits) {
            const input = broken[at];
            if (input?.kind === 'sample')
              broken[at] = { kind: 'sample', sample: spoil(input.sample, value, part) };
          }
          const { result: r } = analyse(broken);
          for (const [k, v] of numbers(r)) if (v !== null) expect(Number.isFinite(v), k).toBe(true);
        },
      ),
      { numRuns: 12 },
    );
  });

  it.each([
    ['zeros', 0],
    ['constants', 5],
    ['NaN', NaN],
    ['infinities', Infinity],
  ])('survives a session of %s and accepts no calibration from it', (_, value) => {
    const all = mapSamples((s) => ({
      ...s,
      acc: { x: value, y: value, z: value },
      gyro: { x: value, y: value, z: value },
    }));
    const { result: r } = analyse(all);
    expect(r.repetitions).toEqual([]);
    expect(r.calibration.accepted).toBe(false);
    for (const [k, v] of numbers(r)) if (v !== null) expect(Number.isFinite(v), k).toBe(true);
  });
});

function spoil(s: ImuSample, value: number, part: number): ImuSample {
  if (part === 0) return { ...s, timeS: value };
  const axis = (['x', 'y', 'z'] as const)[part % 3] ?? 'x';
  return part < 4
    ? { ...s, acc: { ...s.acc, [axis]: value } }
    : { ...s, gyro: { ...s.gyro, [axis]: value } };
}

/** Delays each sensor's packets by up to 0.4 s of session time, each one's own order kept. */
function interleave(all: readonly AnalysisInput[], seed: number): AnalysisInput[] {
  const random = seededRandom(seed);
  const late: Record<string, number> = { chest: 0, trailArm: 0, club: 0 };
  const held: Record<string, number> = { chest: 0, trailArm: 0, club: 0 };
  const due = all.map((input, i) => {
    if (input.kind === 'event') {
      const at = input.event.onsetS + input.event.durationS;
      return { input, at, i };
    }
    const { sensor, timeS } = input.sample;
    if (random() < 0.02) late[sensor] = random() * 0.4;
    held[sensor] = Math.max(held[sensor] ?? 0, timeS + (late[sensor] ?? 0));
    return { input, at: held[sensor] ?? timeS, i };
  });
  return due.sort((a, b) => a.at - b.at || a.i - b.i).map((d) => d.input);
}
