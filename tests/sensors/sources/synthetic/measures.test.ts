import { readFileSync, existsSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { degrees, radians, wrapDeg } from '../../../../src/math/angle.ts';
import {
  IDENTITY,
  aboutX,
  aboutY,
  multiply,
  quat,
  rotateInverse,
} from '../../../../src/math/quat.ts';
import { UNIT_Y, ZERO, scale, vec3 } from '../../../../src/math/vec3.ts';
import {
  type SegmentState,
  armAnglesOf,
  axialRotation,
  flexionOf,
  flexionParts,
  lateralOf,
  leanOf,
  measuresOf,
  turnOf,
} from '../../../../src/sensors/sources/synthetic/measures.ts';
import { thoraxIn } from '../../../../src/sensors/sources/synthetic/pose.ts';

const trunk = (turnDeg: number, lateralDeg: number, flexionDeg: number) =>
  thoraxIn({ turnDeg, lateralDeg, flexionDeg });

describe('exact angles', () => {
  const reference = new URL('../../../../../shared/reference/euler-cases.json', import.meta.url);
  const cases = existsSync(reference) ? JSON.parse(readFileSync(reference, 'utf8')).cases : null;
  type Case = { id: string };
  const q = (a: number[]) => quat(a[0] ?? 0, a[1] ?? 0, a[2] ?? 0, a[3] ?? 0);
  const close = (actual: number, expected: number, digits: number) =>
    expect(wrapDeg(actual - expected)).toBeCloseTo(0, digits);

  // Source: reference cases computed with scipy's Rotation; skipped where the shared folder is absent.
  it.skipIf(!cases)('agree with the reference cases of the thorax', () => {
    for (const c of cases.filter((x: Case) => x.id.startsWith('T'))) {
      if (c.singularSequences.includes('YXZ')) continue;
      const digits = /near-singular/.test(c.notes ?? '') ? 3 : 5;
      close(degrees(flexionOf(q(c.quaternionWxyz))), c.anatomical.flexionForward, digits);
      close(degrees(lateralOf(q(c.quaternionWxyz))), c.anatomical.lateralRight, digits);
      close(degrees(turnOf(q(c.quaternionWxyz))), c.anatomical.turnLeft, digits);
      close(degrees(leanOf(q(c.quaternionWxyz))), c.leanFromVertical, digits);
    }
  });

  it.skipIf(!cases)('agree with the reference cases of the humerus', () => {
    for (const c of cases.filter((x: Case) => x.id.startsWith('H'))) {
      if (c.singularSequences.includes('YXY')) continue;
      const arm = armAnglesOf({ thorax: IDENTITY, humerus: q(c.rightEquivalentQuaternionWxyz) });
      const [plane, elevation, rotation] = c.sequencesRightEquivalent.YXY_ISB.deg;
      const digits = /near-singular/.test(c.notes ?? '') ? 3 : 5;
      close(degrees(arm.plane), plane, digits);
      close(degrees(arm.elevation), -elevation, digits);
      close(degrees(arm.externalRotation), -rotation, digits);
    }
  });
});

describe('added flexion', () => {
  // Worked cases of the design's definition.
  it('takes out what the turn explains: 39.0 = 28.4 + 10.6', () => {
    const parts = flexionParts(trunk(-90, -35, 7), trunk(-8, 6, 46));
    expect(degrees(parts.explained)).toBeCloseTo(28.4, 1);
    expect(degrees(parts.added)).toBeCloseTo(10.6, 1);
  });

  it('is nothing for a turn at constant lean', () => {
    const from = trunk(-90, -35, 7);
    const parts = flexionParts(from, multiply(from, aboutY(radians(70))));
    expect(degrees(parts.added)).toBeCloseTo(0, 9);
    expect(degrees(parts.explained)).toBeGreaterThan(20);
  });

  it('is the whole of a pure bend', () => {
    const parts = flexionParts(trunk(0, 0, 10), trunk(0, 0, 30));
    expect(degrees(parts.added)).toBeCloseTo(20, 9);
    expect(degrees(parts.explained)).toBeCloseTo(0, 9);
  });
});

describe('kept rotation', () => {
  const still: SegmentState = {
    thorax: IDENTITY,
    humerus: IDENTITY,
    thoraxRate: ZERO,
    humerusRate: ZERO,
  };

  it('counts an outward spin of the bone as plus', () => {
    // ISB: about the bone's Y, toward the elbow-to-shoulder axis, + is inward for a right arm.
    const at = () => ({ ...still, humerusRate: scale(UNIT_Y, -0.5) });
    expect(degrees(axialRotation(at, 1, 1.4))).toBeCloseTo(degrees(0.2), 9);
  });

  it('is nothing when trunk and arm turn together', () => {
    const humerus = multiply(aboutX(-1.1), aboutY(0.4));
    const spin = vec3(0.3, 2, -1);
    const at = () => ({
      ...still,
      humerus,
      thoraxRate: spin,
      humerusRate: rotateInverse(humerus, spin),
    });
    expect(axialRotation(at, 0, 1)).toBeCloseTo(0, 12);
  });

  it('is nothing when the bone is only swung', () => {
    const at = () => ({ ...still, humerusRate: vec3(1.5, 0, -0.7) });
    expect(axialRotation(at, 0, 1)).toBe(0);
  });

  it('is (1 - cos elevation) x the plane for a bone carried round a cone with its third angle fixed', () => {
    // Y-X-Y: axial rate = plane' cos(elevation) + third'. With third = -plane the bone keeps its
    // torsion, and what is left is the solid angle's share.
    const elevation = radians(60);
    const rate = 0.8;
    const at = (t: number): SegmentState => {
      const humerus = multiply(multiply(aboutY(rate * t), aboutX(-elevation)), aboutY(-rate * t));
      const inGlobal = (axis: ReturnType<typeof vec3>) => axis;
      const first = inGlobal(scale(UNIT_Y, rate));
      const third = scale(UNIT_Y, -rate);
      const own = rotateInverse(humerus, first);
      return { ...still, humerus, humerusRate: vec3(own.x, own.y + third.y, own.z) };
    };
    expect(axialRotation(at, 0, 1)).toBeCloseTo(rate * (1 - Math.cos(elevation)), 9);
  });
});

describe('measures between two times', () => {
  const from = trunk(-90, -35, 7);
  const to = trunk(-8, 6, 46);
  const arm = multiply(multiply(aboutY(0.6), aboutX(-1.2)), aboutY(-1));
  const at = (t: number): SegmentState => {
    const thorax = t < 1.2 ? from : to;
    return {
      thorax,
      humerus: multiply(thorax, arm),
      thoraxRate: ZERO,
      humerusRate: ZERO,
    };
  };
  const m = measuresOf(at, { fromS: 1, toS: 1.4, armOnsetS: 1.05, catchS: 1.4 }, radians(2));

  it('follow the definitions', () => {
    expect(m.flexionTopDeg).toBeCloseTo(7, 9);
    expect(m.flexionCatchDeg).toBeCloseTo(46, 9);
    expect(m.flexionGainDeg).toBeCloseTo(39, 9);
    expect(m.turnExplainedDeg + m.addedFlexionDeg).toBeCloseTo(39, 9);
    expect(m.turnTopDeg).toBeCloseTo(-92, 9);
    expect(m.turnTowardTargetDeg).toBeCloseTo(82, 9);
    expect(m.lateralChangeDeg).toBeCloseTo(41, 9);
    // cos lean = cos lateral cos flexion
    const lean = (a: number, b: number) =>
      degrees(Math.acos(Math.cos(radians(a)) * Math.cos(radians(b))));
    expect(m.leanChangeDeg).toBeCloseTo(lean(6, 46) - lean(35, 7), 9);
    expect(m.elevationTopDeg).toBeCloseTo(degrees(1.2), 9);
    expect(m.externalRotationTopDeg).toBeCloseTo(degrees(1), 9);
    expect(m.chestLeadMs).toBeCloseTo(50, 9);
    expect(m.releaseToCatchMs).toBeCloseTo(400, 9);
    // g t^2 / 2 at 0.4 s: 0.785 m (CGPM 1901)
    expect(m.fallCm).toBeCloseTo(78.5, 1);
  });
});
