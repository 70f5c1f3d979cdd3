import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BUILD } from '../../../src/dashboard/body/build.ts';
import { type Hands, skeletonOf } from '../../../src/dashboard/body/figure.ts';
import { ghostOf, partsOf } from '../../../src/dashboard/body/parts.ts';
import type { Arm, Segments, Skeleton } from '../../../src/dashboard/body/skeleton.ts';
import { fromRotationVector, multiply } from '../../../src/math/quat.ts';
import { type Vec3, norm, scale, subtract, vec3 } from '../../../src/math/vec3.ts';
import { anyAddress, anyBody, anyTop } from './bodies.ts';

const ALL_HANDS: readonly Hands[] = [
  { do: 'hold' },
  { do: 'hang' },
  { do: 'hang', bend: 1.57 },
  { do: 'wait', open: 0.5, way: 0.5, bend: 1.2, club: null },
];

const apart = (a: Vec3, b: Vec3): number => norm(subtract(a, b));

function lengthsHold(s: Skeleton): void {
  for (const arm of [s.trailArm, s.leadArm]) {
    expect(apart(arm.shoulder, arm.elbow)).toBeCloseTo(BUILD.upperArm, 6);
    expect(apart(arm.elbow, arm.wrist)).toBeCloseTo(BUILD.forearm, 6);
    expect(apart(arm.wrist, arm.fist)).toBeCloseTo(BUILD.fist, 6);
  }
  for (const leg of [s.trail, s.lead]) {
    expect(apart(leg.hip, leg.knee)).toBeCloseTo(BUILD.thigh, 6);
    expect(apart(leg.knee, leg.ankle)).toBeCloseTo(BUILD.shank, 6);
    expect(leg.ankle.y).toBeCloseTo(BUILD.ankle, 6);
  }
  expect(apart(s.lumbar, s.neck)).toBeCloseTo(BUILD.trunk, 6);
  if (s.club !== null) expect(norm(s.club.along)).toBeCloseTo(1, 6);
}

describe('whatever was measured', () => {
  it('draws numbers only, limbs of one length, and feet on the ground', () => {
    fc.assert(
      fc.property(anyBody, fc.constantFrom(...ALL_HANDS), (body, hands) => {
        const s = skeletonOf(body, hands);
        lengthsHold(s);
        for (const view of ['faceOn', 'downTheLine'] as const)
          for (const left of [false, true])
            for (const { path } of [...partsOf(s, view, left), ...ghostOf(s, view, left)])
              expect(path).not.toMatch(/NaN|Infinity|undefined/);
      }),
      { numRuns: 1500 },
    );
  });

  it('never draws the club through the ground while it is held', () => {
    fc.assert(
      fc.property(anyBody, (body) => {
        const { club, trailArm } = skeletonOf(body, { do: 'hold' });
        if (trailArm.fist.y < 0.1) return;
        expect(club!.grip.y + club!.along.y * BUILD.shaft).toBeGreaterThan(-0.06);
      }),
    );
  });
});

const turnedBy = (body: Segments, by: Vec3): Segments => ({
  thorax: multiply(fromRotationVector(by), body.thorax),
  humerus: multiply(fromRotationVector(scale(by, -1)), body.humerus),
});

const pointsOf = (s: Skeleton): Vec3[] => {
  const arm = ({ shoulder, elbow, fist }: Arm): Vec3[] => [shoulder, elbow, fist];
  return [s.head, s.neck, s.hips, s.trail.knee, s.lead.knee, ...arm(s.trailArm), ...arm(s.leadArm)];
};

describe('a small change of the body', () => {
  it.each([
    ['at address', anyAddress],
    ['at the top', anyTop],
  ])('%s is a small change of the drawing: a tenth of a degree, less than 1.5 cm', (_, bodies) => {
    const tiny = fc.integer({ min: -1000, max: 1000 }).map((n) => (n / 1000) * 0.0017);
    fc.assert(
      fc.property(bodies, fc.tuple(tiny, tiny, tiny), (body, [x, y, z]) => {
        const before = pointsOf(skeletonOf(body, { do: 'hold' }));
        const after = pointsOf(skeletonOf(turnedBy(body, vec3(x, y, z)), { do: 'hold' }));
        before.forEach((p, i) => expect(apart(p, after[i]!)).toBeLessThan(0.015));
      }),
    );
  });
});
