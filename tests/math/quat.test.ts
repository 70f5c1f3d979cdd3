import fc from 'fast-check';
import { glMatrix, mat3, quat as glQuat, vec3 as glVec3 } from 'gl-matrix';
import Quaternion from 'quaternion';
import { describe, expect, it } from 'vitest';
import {
  type Quat,
  aboutX,
  aboutY,
  aboutZ,
  conjugate,
  fromAxes,
  fromRotationVector,
  mirrorQuat,
  multiply,
  normaliseQuat,
  quat,
  quatAngle,
  quatNorm,
  rotate,
  rotateInverse,
  slerp,
  toMatrix,
  toRotationVector,
} from '../../src/math/quat.ts';
import { type Vec3, UNIT_X, UNIT_Y, UNIT_Z, norm, vec3 } from '../../src/math/vec3.ts';

// Two libraries that share no code with ours: `quaternion` (scalar first) and `gl-matrix` (scalar last).
glMatrix.setMatrixArrayType(Array);

const component = fc.double({ min: -1, max: 1, noNaN: true });
const anyQuat = fc
  .tuple(component, component, component, component)
  .filter((c) => Math.hypot(...c) > 0.05)
  .map(([w, x, y, z]) => normaliseQuat(quat(w, x, y, z)));
const anyVec = fc.tuple(component, component, component).map(([x, y, z]) => vec3(x, y, z));

const named = ([x = NaN, y = NaN, z = NaN, w = NaN]: ArrayLike<number> & Iterable<number>): Quat =>
  quat(w, x, y, z);
const turned = (q: Quaternion, v: Vec3): number[] => {
  const r = q.rotateVector([v.x, v.y, v.z]);
  return Array.isArray(r) ? r : [r.x, r.y, r.z];
};
const theirs = (q: Quat): Quaternion => new Quaternion(q.w, q.x, q.y, q.z);
const gl = (q: Quat): glQuat => glQuat.fromValues(q.x, q.y, q.z, q.w);

function expectQuat(a: Quat, b: { w: number; x: number; y: number; z: number }): void {
  const sign = a.w * b.w + a.x * b.x + a.y * b.y + a.z * b.z < 0 ? -1 : 1;
  for (const k of ['w', 'x', 'y', 'z'] as const) expect(sign * b[k]).toBeCloseTo(a[k], 12);
}

function expectVec(a: Vec3, b: readonly number[]): void {
  expect(b[0]).toBeCloseTo(a.x, 12);
  expect(b[1]).toBeCloseTo(a.y, 12);
  expect(b[2]).toBeCloseTo(a.z, 12);
}

describe('quaternions agree with independent libraries', () => {
  it('in the product', () => {
    fc.assert(
      fc.property(anyQuat, anyQuat, (a, b) => {
        expectQuat(multiply(a, b), theirs(a).mul(theirs(b)));
        expectQuat(multiply(a, b), named(glQuat.multiply(glQuat.create(), gl(a), gl(b))));
      }),
    );
  });

  it('in turning a vector there and back', () => {
    fc.assert(
      fc.property(anyQuat, anyVec, (q, v) => {
        expectVec(rotate(q, v), turned(theirs(q), v));
        expectVec(rotate(q, v), [...glVec3.transformQuat(glVec3.create(), [v.x, v.y, v.z], gl(q))]);
        expectVec(rotateInverse(q, v), turned(theirs(q).conjugate(), v));
      }),
    );
  });

  it('in the matrix', () => {
    fc.assert(
      fc.property(anyQuat, (q) => {
        expect(toMatrix(q).flat()).toEqual(
          theirs(q)
            .toMatrix(false)
            .map((m: number) => expect.closeTo(m, 12)),
        );
        const columns = mat3.fromQuat(mat3.create(), gl(q));
        const [r0, r1, r2] = toMatrix(q);
        expectVec(vec3(r0[0], r1[0], r2[0]), [columns[0], columns[1], columns[2]]);
        expectVec(vec3(r0[2], r1[2], r2[2]), [columns[6], columns[7], columns[8]]);
      }),
    );
  });

  it('in interpolation the shorter way', () => {
    fc.assert(
      fc.property(anyQuat, anyQuat, fc.double({ min: 0, max: 1, noNaN: true }), (a, b, t) => {
        // exactly opposite orientations have no shorter way
        fc.pre(Math.abs(quatAngle(a, b) - Math.PI) > 1e-3);
        const s = slerp(a, b, t);
        const other = named(glQuat.slerp(glQuat.create(), gl(a), gl(b), t));
        expect(quatAngle(s, normaliseQuat(other))).toBeLessThan(1e-6);
        expect(quatAngle(a, s)).toBeCloseTo(t * quatAngle(a, b), 5);
      }),
    );
  });

  it('in axis and angle', () => {
    fc.assert(
      fc.property(anyVec, fc.double({ min: 0, max: 3.1, noNaN: true }), (axis, angle) => {
        fc.pre(norm(axis) > 0.05);
        const k = angle / norm(axis);
        const q = fromRotationVector(vec3(axis.x * k, axis.y * k, axis.z * k));
        expectQuat(q, Quaternion.fromAxisAngle([axis.x, axis.y, axis.z], angle));
        expectVec(toRotationVector(q), [axis.x * k, axis.y * k, axis.z * k]);
      }),
    );
  });

  it('in the exponential and the logarithm', () => {
    fc.assert(
      fc.property(anyVec, (v) => {
        const half = new Quaternion(0, v.x / 2, v.y / 2, v.z / 2);
        expectQuat(fromRotationVector(v), half.exp());
      }),
    );
  });

  it('in the angle between two orientations', () => {
    fc.assert(
      fc.property(anyQuat, anyQuat, (a, b) => {
        const angle = glQuat.getAngle(gl(a), gl(b));
        expect(Math.cos(quatAngle(a, b))).toBeCloseTo(Math.cos(angle), 9);
      }),
    );
  });
});

describe('quaternions by themselves', () => {
  it('a quarter turn about the vertical brings forward to the left', () => {
    expectVec(rotate(aboutY(Math.PI / 2), UNIT_X), [0, 0, -1]);
    expectVec(rotate(aboutX(Math.PI / 2), UNIT_Y), [0, 0, 1]);
    expectVec(rotate(aboutZ(Math.PI / 2), UNIT_X), [0, 1, 0]);
  });

  it('come back from their own axes, in every branch', () => {
    fc.assert(
      fc.property(anyQuat, (q) => {
        const back = fromAxes(rotate(q, UNIT_X), rotate(q, UNIT_Y), rotate(q, UNIT_Z));
        expect(quatAngle(q, back)).toBeLessThan(1e-7);
      }),
    );
    for (const half of [aboutX, aboutY, aboutZ]) {
      const q = half(Math.PI);
      const back = fromAxes(rotate(q, UNIT_X), rotate(q, UNIT_Y), rotate(q, UNIT_Z));
      expect(quatAngle(q, back)).toBeLessThan(1e-7);
    }
  });

  it('undo themselves', () => {
    fc.assert(fc.property(anyQuat, (q) => expectQuat(multiply(q, conjugate(q)), quat(1, 0, 0, 0))));
  });

  it("mirror as the mirrored movement does: M' = D M D with D = diag(1, 1, -1)", () => {
    fc.assert(
      fc.property(anyQuat, anyVec, (q, v) => {
        const mirrored = rotate(mirrorQuat(q), vec3(v.x, v.y, -v.z));
        const plain = rotate(q, v);
        expectVec(mirrored, [plain.x, plain.y, -plain.z]);
      }),
    );
  });

  it('fall back to no rotation where there is no direction', () => {
    for (const bad of [quat(0, 0, 0, 0), quat(NaN, 0, 0, 1), quat(Infinity, 0, 0, 0)])
      expect(normaliseQuat(bad)).toEqual(quat(1, 0, 0, 0));
    expect(quatNorm(normaliseQuat(quat(3, 4, 0, 0)))).toBeCloseTo(1, 15);
  });
});
