import { describe, expect, it } from 'vitest';
import { analyse, inputsOf } from './simulated.ts';

const calibrationOf = (options: Parameters<typeof inputsOf>[0]) =>
  analyse(inputsOf(options)).result.calibration;

describe('calibration', () => {
  it.each([1, 2, 3, 4, 5, 6])('accepts a normal one (seed %i)', (seed) => {
    const c = calibrationOf({ seed, script: '' });
    expect(c.accepted).toBe(true);
    expect(c.chest.explained).toBeGreaterThan(0.95);
    expect(c.trailArm.explained).toBeGreaterThan(0.95);
  });
  it('accepts two repetitions, as in older recordings', () => {
    expect(calibrationOf({ seed: 2, calibrationRepetitions: 2 }).accepted).toBe(true);
  });
  it('refuses a single bow', () => {
    const c = calibrationOf({ seed: 2, calibrationRepetitions: 1 });
    expect(c.accepted).toBe(false);
    expect(c.problems.map((p) => p.code)).toContain('too-few-repetitions');
  });

  const faults: [NonNullable<Parameters<typeof inputsOf>[0]['calibrationFault']>, string][] = [
    ['moving-while-still', 'moving-while-still'],
    ['wobbly-bow', 'axis-unclear'],
    ['wobbly-raise', 'axis-unclear'],
    ['swapped', 'swapped-sensors'],
    ['chest-turned-over', 'upside-down'],
    ['arm-turned-over', 'upside-down'],
    ['chest-gyro-sign', 'gyro-sign'],
    ['arm-gyro-sign', 'gyro-sign'],
  ];
  it.each(faults)('refuses %s, says %s and what to do', (calibrationFault, code) => {
    for (const seed of [3, 4]) {
      const c = calibrationOf({ seed, calibrationFault, hand: seed % 2 ? 'right' : 'left' });
      expect(c.accepted).toBe(false);
      const problem = c.problems.find((p) => p.code === code);
      expect(problem, JSON.stringify(c.problems)).toBeDefined();
      expect(problem?.message).toMatch(/:|\./);
    }
  });

  it('names the missing step and asks to begin again', () => {
    const inputs = inputsOf({ seed: 1 });
    const without = (type: string) =>
      analyse(inputs.filter((i) => i.kind === 'sample' || i.event.type !== type)).result
        .calibration;
    expect(without('calibration-bow').problems[0]?.message).toContain('calibration-bow');
    expect(without('calibration-armRaise').problems[0]?.message).toContain('calibration-armRaise');
    expect(without('calibration-stand').problems[0]?.message).toContain('calibration-stand');
    expect(without('calibration-bow').accepted).toBe(false);
  });
  it('says that nothing was asked where no step is recorded', () => {
    const c = analyse(inputsOf({ seed: 1 }).filter((i) => i.kind === 'sample')).result.calibration;
    expect(c.accepted).toBe(false);
    expect(c.problems[0]?.code).toBe('missing-step');
  });
  it('refuses a session with one sensor only', () => {
    const c = analyse(
      inputsOf({ seed: 1 }).filter((i) => i.kind === 'event' || i.sample.sensor === 'chest'),
    ).result.calibration;
    expect(c.accepted).toBe(false);
    expect(c.problems.map((p) => p.message).join()).toContain('trail arm');
  });
});
