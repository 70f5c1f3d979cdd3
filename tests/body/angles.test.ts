import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { flexionGain, thoraxAngles } from '../../src/body/angles.ts';
import { degrees, radians } from '../../src/math/angle.ts';
import { type Quat, aboutX, aboutY, aboutZ, multiply } from '../../src/math/quat.ts';
import { checkCases, type CaseFile } from '../reference/eulerCases.ts';

/** Intrinsic Y-X-Z from (turn toward the target, lateral to the trail side, flexion), deg. */
const thorax = (turn: number, lateral: number, flexion: number): Quat =>
  multiply(multiply(aboutY(radians(turn)), aboutX(radians(lateral))), aboutZ(radians(-flexion)));

describe('thorax and humerus angles', () => {
  const file = JSON.parse(
    readFileSync(new URL('../reference/euler-cases.json', import.meta.url), 'utf8'),
  ) as CaseFile;

  // Source: scipy.spatial.transform.Rotation 1.17.1, recomputed with closed formulas (see the file's meta)
  it('has all 33 worked cases', () => {
    expect(file.cases).toHaveLength(33);
  });
  it.each(checkCases(file).map((r) => [r.id, r] as const))('%s agrees to its tolerance', (_, r) => {
    expect(r.largestDeg, r.worst).toBeLessThanOrEqual(r.toleranceDeg);
  });

  it('reads the angles it was made from', () => {
    const a = thoraxAngles(thorax(-90, -35, 7));
    expect(degrees(a.turn)).toBeCloseTo(-90, 9);
    expect(degrees(a.lateral)).toBeCloseTo(-35, 9);
    expect(degrees(a.flexion)).toBeCloseTo(7, 9);
  });
});

describe('added flexion', () => {
  const deg = (a: Quat, b: Quat) => {
    const g = flexionGain(a, b);
    return { gain: degrees(g.gain), turn: degrees(g.turnExplained), added: degrees(g.added) };
  };

  // Source: worked example of the design's biomechanics page, one decimal
  it('parts the gain from the top to the catch into turn and bending', () => {
    const g = deg(thorax(-90, -35, 7), thorax(-8, 6, 46));
    expect(g.gain).toBeCloseTo(39.0, 1);
    expect(g.turn).toBeCloseTo(28.4, 1);
    expect(g.added).toBeCloseTo(10.6, 1);
  });

  it('is zero for a turn at constant lean, however far', () => {
    const leaning = (turn: number) => multiply(aboutZ(radians(-40)), aboutY(radians(turn)));
    const g = deg(leaning(-90), leaning(0));
    expect(g.gain).toBeCloseTo(40, 9);
    expect(g.added).toBeCloseTo(0, 9);
  });

  it('is all of a pure flexion', () => {
    const g = deg(thorax(0, 0, 10), thorax(0, 0, 30));
    expect(g.added).toBeCloseTo(20, 9);
    expect(g.turn).toBeCloseTo(0, 9);
  });
});
