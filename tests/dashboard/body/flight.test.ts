import { describe, expect, it } from 'vitest';
import { BUILD } from '../../../src/dashboard/body/build.ts';
import { skeletonOf } from '../../../src/dashboard/body/figure.ts';
import { flightOf, handsDuring } from '../../../src/dashboard/body/flight.ts';
import { POSES } from '../../../src/dashboard/body/poses.ts';
import { DRILL, drillPose } from '../../../src/dashboard/drill/model.ts';
import { STANDARD_GRAVITY } from '../../../src/math/gravity.ts';
import { type Vec3, add, dot, norm, scale, subtract } from '../../../src/math/vec3.ts';

const { releaseS, catchS } = DRILL;

const at = (flight: ReturnType<typeof flightOf>, timeS: number) =>
  skeletonOf(drillPose(timeS), handsDuring(flight, timeS));

const gripAt = (flight: ReturnType<typeof flightOf>, timeS: number): Vec3 =>
  at(flight, timeS).club!.grip;

const caught = flightOf(drillPose, releaseS, catchS);
const missed = flightOf(drillPose, releaseS, null);

describe('the club between release and catch', () => {
  it('is in both hands before the release', () => {
    const s = at(caught, releaseS - 0.1);
    expect(s.trailOpen).toBe(0);
    expect(norm(subtract(s.club!.grip, s.trailArm.fist))).toBeLessThan(0.06);
  });

  it.each([
    ['caught', caught],
    ['not caught', missed],
  ])('falls with g from the hands, and turns no more (%s)', (_, flight) => {
    const h = 0.02;
    for (let t = flight!.leaveS; t < flight!.leaveS + 0.25; t += 0.04) {
      const [a, b, c] = [t, t + h, t + 2 * h].map((s) => gripAt(flight, s)) as [Vec3, Vec3, Vec3];
      const acceleration = scale(add(subtract(a, scale(b, 2)), c), 1 / h ** 2);
      expect(acceleration.x).toBeCloseTo(0, 6);
      expect(acceleration.y).toBeCloseTo(-STANDARD_GRAVITY, 6);
      expect(acceleration.z).toBeCloseTo(0, 6);
      expect(at(flight, t).club!.along).toEqual(flight!.from.along);
    }
  });

  it('is in the trail hand from the catch on, and the hand is closed round the shaft', () => {
    for (const t of [catchS, catchS + 0.1, catchS + 0.5]) {
      const s = at(caught, t);
      const way = subtract(s.trailArm.fist, s.club!.grip);
      const aside = subtract(way, scale(s.club!.along, dot(way, s.club!.along)));
      expect(norm(aside)).toBeLessThan(0.01);
      expect(s.trailOpen).toBe(0);
    }
  });

  it('goes on without a jump through leaving and catching', () => {
    for (const t of [caught!.leaveS, catchS]) {
      const [a, b] = [at(caught, t - 1e-4), at(caught, t + 1e-4)];
      expect(norm(subtract(a.club!.grip, b.club!.grip))).toBeLessThan(0.005);
      expect(norm(subtract(a.trailArm.fist, b.trailArm.fist))).toBeLessThan(0.005);
    }
  });

  it('is never shown as caught where no catch was seen: it lies on the ground, and no hand closes', () => {
    const late = at(missed, releaseS + 1.2);
    expect(late.trailOpen).toBe(1);
    const { grip, along } = late.club!;
    const lowest = Math.min(grip.y + BUILD.shaft * along.y, grip.y - BUILD.butt * along.y);
    expect(lowest).toBeCloseTo(0.015, 6);
    expect(handsDuring(missed, releaseS + 9).do).toBe('wait');
  });

  it('is held throughout where the body at the release was lost', () => {
    expect(
      handsDuring(
        flightOf(() => null, 1, 1.4),
        1.3,
      ),
    ).toEqual({ do: 'hold' });
  });

  it('was not caught where the body at the catch was lost', () => {
    const flight = flightOf((s) => (s < 1.3 ? POSES.top : null), 1, 1.4);
    expect(flight?.catchS).toBeNull();
  });
});
