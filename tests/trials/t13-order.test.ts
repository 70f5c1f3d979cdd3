// scipy/scipy#19649: a quaternion in the order x, y, z, w is taken for w, x, y, z.
import { quat as glQuat, glMatrix } from 'gl-matrix';
import Quaternion from 'quaternion';
import { describe, expect, it } from 'vitest';
import { aboutY, quat, quatAngle, rotate } from '../../src/math/quat.ts';
import { UNIT_X } from '../../src/math/vec3.ts';
import { createTrack, stepTrack } from '../../src/orientation/track.ts';
import { UP, sample } from '../orientation/imu.ts';

glMatrix.setMatrixArrayType(Array);

describe('the order of quaternion components', () => {
  const q = aboutY(Math.PI / 2);

  it('is told by names, so that libraries of both orders say the same', () => {
    const scalarFirst = new Quaternion(q.w, q.x, q.y, q.z).rotateVector({ x: 1, y: 0, z: 0 });
    const scalarLast = glQuat.setAxisAngle(glQuat.create(), [0, 1, 0], Math.PI / 2);
    const [x = NaN, y = NaN, z = NaN, w = NaN] = scalarLast;
    expect(scalarFirst).toMatchObject({ z: expect.closeTo(-1, 12) as number });
    expect(rotate(q, UNIT_X).z).toBeCloseTo(-1, 12);
    expect(quatAngle(q, quat(w, x, y, z))).toBeLessThan(1e-9);
  });

  it('would show: the same four numbers in the other order are another rotation', () => {
    expect(quatAngle(q, quat(q.x, q.y, q.z, q.w))).toBeGreaterThan(1);
  });

  it('never becomes an array on its way out', () => {
    stepTrack(createTrack(), sample(0, UP), (o) => {
      expect(JSON.parse(JSON.stringify(o.q))).toEqual({ w: 1, x: 0, y: 0, z: 0 });
    });
    expect.assertions(1);
  });
});
