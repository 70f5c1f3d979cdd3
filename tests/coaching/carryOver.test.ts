import { describe, expect, it } from 'vitest';
import { carryOver } from '../../src/coaching/carryOver.ts';
import type { Measures } from '../../src/swings/repetition.ts';
import { ball, rehearsal } from './repetitions.ts';

const rehearsals = (key: keyof Measures, values: (number | null)[]) =>
  values.map((v) => rehearsal({ measures: { [key]: v } }));
const balls = (key: keyof Measures, values: (number | null)[]) =>
  values.map((v) => ball({ [key]: v }));

describe('carry-over', () => {
  it("divides the balls' median by the rehearsals' median", () => {
    const key = 'addedFlexionDeg';
    expect(carryOver(rehearsals(key, [8, 10, 30]), balls(key, [4, 5, 6])).addedFlexion).toBe(0.5);
  });

  it('is above 1 for kept rotation when balls lose more', () => {
    const key = 'keptRotationDeg';
    expect(
      carryOver(rehearsals(key, [-10, -10, -10]), balls(key, [-20, -20, -20])).keptRotation,
    ).toBe(2);
  });

  it('is not given with fewer than three of either kind', () => {
    const key = 'addedFlexionDeg';
    expect(carryOver(rehearsals(key, [8, 10]), balls(key, [4, 5, 6])).addedFlexion).toBeNull();
    expect(
      carryOver(rehearsals(key, [8, 10, 9]), balls(key, [4, null, 6])).addedFlexion,
    ).toBeNull();
    expect(carryOver([], [])).toEqual({ addedFlexion: null, keptRotation: null });
  });

  it('is not given where the rehearsals lie near zero', () => {
    const key = 'addedFlexionDeg';
    expect(
      carryOver(rehearsals(key, [1.9, 1.9, -1.9]), balls(key, [4, 5, 6])).addedFlexion,
    ).toBeNull();
  });

  it('leaves out repetitions with a gap or saturation', () => {
    const key = 'addedFlexionDeg';
    const touched = rehearsal({ flags: ['gap'], measures: { [key]: 100 } });
    expect(
      carryOver([...rehearsals(key, [10, 10]), touched], balls(key, [5, 5, 5])).addedFlexion,
    ).toBeNull();
  });
});
