import { describe, expect, it } from 'vitest';
import {
  IDENTITY,
  aboutY,
  fromRotationVector,
  multiply,
  quatAngle,
  rotate,
  rotateInverse,
} from '../../../../src/math/quat.ts';
import { type Vec3, UNIT_Y, add, norm, scale, subtract, vec3 } from '../../../../src/math/vec3.ts';
import {
  GROUND,
  carry,
  displaced,
  turnAbout,
} from '../../../../src/sensors/sources/synthetic/chain.ts';
import {
  channelAt,
  jet,
  movedAt,
  moveTo,
  movementDone,
} from '../../../../src/sensors/sources/synthetic/channel.ts';
import { type Scene, createScene } from '../../../../src/sensors/sources/synthetic/scene.ts';
import { calibrate } from '../../../../src/sensors/sources/synthetic/motions/calibration.ts';
import { sensorSite } from '../../../../src/sensors/sources/synthetic/figure.ts';
import { parseScript } from '../../../../src/sensors/sources/synthetic/script.ts';
import { play } from '../../../../src/sensors/sources/synthetic/simulation.ts';
import { idealReading } from '../../../../src/sensors/sources/synthetic/sensorModel.ts';

/** A planned session of every kind of movement. */
function wholeScene(): Scene {
  const scene = createScene(5);
  calibrate(scene, { repetitions: 3, short: true, fault: null });
  const script = 'r b:0.6 p r:arms-first walk tee abort waggle idle:5 r:missed-catch takeoff';
  for (const token of parseScript(script)) play(scene, token);
  return scene;
}

describe('a movement of one joint', () => {
  // Flash & Hogan 1985: x = D (10 s^3 - 15 s^4 + 6 s^5), peak rate 1.875 D/T at the middle.
  const channel = [{ timeS: 0, x: 1, v: 0, a: 0 }];
  moveTo(channel, 3, 2, 2.5);

  it('is made without kinks: its jerk starts and ends softly, its rest and its way are kept', () => {
    const step = 1e-4;
    const jerk = (s: number) =>
      (movedAt(channel, s + step).a - movedAt(channel, s - step).a) / (2 * step);
    const planned = (60 * 2) / 0.5 ** 3; // jerk of the planned movement in its first instant
    expect(Math.abs(jerk(2))).toBeLessThan(0.75 * planned);
    expect(movedAt(channel, 1.97)).toEqual(jet(1));
    expect(movedAt(channel, 2.53).x).toBeCloseTo(3, 12);
    expect(movedAt(channel, 2.25).x).toBeCloseTo(2, 12);
  });

  it('is the minimum-jerk movement between two rests', () => {
    expect(channelAt(channel, 2.25).x).toBeCloseTo(2, 12);
    expect(channelAt(channel, 2.25).v).toBeCloseTo((1.875 * 2) / 0.5, 12);
    expect(channelAt(channel, 2.25).a).toBeCloseTo(0, 9);
    expect(channelAt(channel, 2.1).x).toBeCloseTo(1 + 2 * movementDone(0.2), 12);
    expect(movementDone(0.2)).toBeCloseTo(0.05792, 12);
  });

  it('rests before and after', () => {
    expect(channelAt(channel, 1)).toEqual(jet(1));
    expect(channelAt(channel, 9)).toEqual(jet(3));
  });

  it('refuses a plan that runs backwards', () => {
    expect(() => moveTo(channel, 0, 2.4, 3)).toThrow(RangeError);
  });
});

describe('the chain of frames', () => {
  it('gives a point on a turntable its centripetal and tangential acceleration', () => {
    const table = turnAbout(GROUND, 'y', jet(0.7, 3, 2));
    const rim = carry(table, vec3(0.5, 0, 0));
    const radial = rotate(table.q, vec3(1, 0, 0));
    const tangential = rotate(table.q, vec3(0, 0, -1));
    const expected = add(scale(radial, -9 * 0.5), scale(tangential, 2 * 0.5));
    expect(norm(subtract(rim.acceleration, expected))).toBeLessThan(1e-12);
  });

  it('adds the gyroscopic term when one turning axis is carried by another', () => {
    // Precession W about Y carries a spin w about its own X: angular acceleration W x w, along -Z.
    const spinning = turnAbout(turnAbout(GROUND, 'y', jet(0, 2)), 'x', jet(0, 5));
    expect(spinning.angularAcc.z).toBeCloseTo(-10, 12);
    expect(norm(spinning.angularAcc)).toBeCloseTo(10, 12);
  });

  it('moves along global axes', () => {
    const lift = displaced(GROUND, jet(0), jet(1, 2, 3), jet(0));
    expect([lift.position.y, lift.velocity.y, lift.acceleration.y]).toEqual([1, 2, 3]);
  });
});

describe.each(['chest', 'trailArm'] as const)('the %s sensor through a whole session', (sensor) => {
  const scene = wholeScene();
  const at = (t: number) => sensorSite(scene.golfer.build, scene.score, sensor, t);
  const times = Array.from({ length: 3000 }, (_, i) => 0.05 + ((scene.nowS - 0.1) * i) / 2999);
  const GRAVITY = scale(UNIT_Y, 9.80665);

  it('feels the second derivative of its position, and gravity', () => {
    const h = 5e-4;
    for (const t of times) {
      const [p, q, r, s, u] = [-2, -1, 0, 1, 2].map((k) => at(t + k * h).position) as [
        Vec3,
        Vec3,
        Vec3,
        Vec3,
        Vec3,
      ];
      // Fourth-order central difference.
      const sum = add(scale(add(q, s), 16), scale(add(add(p, u), scale(r, 30)), -1));
      const acceleration = scale(sum, 1 / (12 * h * h));
      const felt = rotate(at(t).q, idealReading(at(t), IDENTITY).acc);
      // The jerk steps at knots, where a difference over 2 ms cannot be better than this.
      expect(norm(subtract(felt, add(acceleration, GRAVITY)))).toBeLessThan(0.25);
    }
  });

  it('reads rates whose integral is its orientation', () => {
    const h = 2e-3;
    let q = at(0).q;
    let worst = 0;
    for (let i = 0; i * h < scene.nowS; i++) {
      const rate = idealReading(at((i + 0.5) * h), IDENTITY).gyro;
      q = multiply(q, fromRotationVector(scale(rate, h)));
      if (i % 100 === 0) worst = Math.max(worst, quatAngle(q, at((i + 1) * h).q));
    }
    expect(worst).toBeLessThan(2e-4);
  });

  it('is mounted any way round without a change of what is felt', () => {
    const site = at(20);
    const mounting = aboutY(1.1);
    const a = idealReading(site, IDENTITY);
    const b = idealReading(site, mounting);
    expect(norm(subtract(rotateInverse(mounting, a.acc), b.acc))).toBeLessThan(1e-12);
    expect(norm(subtract(rotateInverse(mounting, a.gyro), b.gyro))).toBeLessThan(1e-12);
  });
});
