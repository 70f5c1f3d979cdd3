import { describe, expect, it } from 'vitest';
import { moments, principalAxis } from '../../src/math/principalAxis.ts';
import { gaussian, seededRandom } from '../../src/math/random.ts';
import { type Vec3, angleBetween, vec3 } from '../../src/math/vec3.ts';

const off = (a: Vec3, b: Vec3): number =>
  Math.min(angleBetween(a, b), Math.PI - angleBetween(a, b));

/** Coefficients of the characteristic polynomial: an eigenvalue is a root, whatever found it. */
function characteristic({ xx, xy, xz, yy, yz, zz }: ReturnType<typeof moments>, l: number): number {
  const [a, b, c] = [xx - l, yy - l, zz - l];
  return a * (b * c - yz * yz) - xy * (xy * c - yz * xz) + xz * (xy * yz - b * xz);
}

describe('the first principal axis', () => {
  it('is the direction of most movement, and says how much of it', () => {
    const m = moments([vec3(0, 0, 3), vec3(0, 0, -3), vec3(1, 0, 0), vec3(0, 1, 0)]);
    const { axis, explained } = principalAxis(m);
    expect(off(axis, vec3(0, 0, 1))).toBeLessThan(1e-9);
    expect(explained).toBeCloseTo(0.9, 12);
  });

  it('has the largest root of the characteristic polynomial for its share', () => {
    const random = seededRandom(3);
    for (let n = 0; n < 20; n++) {
      const cloud = Array.from({ length: 40 }, () =>
        vec3(2.5 * gaussian(random), gaussian(random), 0.6 * gaussian(random)),
      );
      const m = moments(cloud);
      const trace = m.xx + m.yy + m.zz;
      const largest = principalAxis(m).explained * trace;
      expect(Math.abs(characteristic(m, largest)) / trace ** 3).toBeLessThan(1e-9);
      expect(largest).toBeGreaterThan(trace / 2);
    }
  });

  it('is not the second one, where that lies along an axis of the sensor', () => {
    // most movement along (1, 1, 0), nearly as much along z
    const m = moments([vec3(1, 1, 0), vec3(0, 0, 1.3)]);
    expect(off(principalAxis(m).axis, vec3(Math.SQRT1_2, Math.SQRT1_2, 0))).toBeLessThan(1e-9);
  });

  it('of no movement explains nothing', () => {
    expect(principalAxis(moments([])).explained).toBe(0);
  });
});
