import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BUILD } from '../../../src/dashboard/body/build.ts';
import { type Hands, ballAt, skeletonOf } from '../../../src/dashboard/body/figure.ts';
import { POSES } from '../../../src/dashboard/body/poses.ts';
import { type ViewName, project } from '../../../src/dashboard/body/project.ts';
import type { Arm, Club, Skeleton } from '../../../src/dashboard/body/skeleton.ts';
import { rotate } from '../../../src/math/quat.ts';
import { type Vec3, add, dot, norm, scale, subtract, vec3 } from '../../../src/math/vec3.ts';
import { anyAddress, anyTop, onTheWay } from './bodies.ts';

const HOLD: Hands = { do: 'hold' };
const HANG: Hands = { do: 'hang' };
const VIEWS: readonly ViewName[] = ['faceOn', 'downTheLine'];

const apart = (a: Vec3, b: Vec3): number => norm(subtract(a, b));
const headOfClub = ({ grip, along }: Club): Vec3 => add(grip, scale(along, BUILD.shaft));

/** How far a point is from the shaft's line, m. */
function fromShaft(p: Vec3, { grip, along }: Club): number {
  const way = subtract(p, grip);
  return norm(subtract(way, scale(along, dot(way, along))));
}

const bendDeg = ({ shoulder, elbow, wrist }: Arm): number => {
  const [upper, lower] = [subtract(elbow, shoulder), subtract(wrist, elbow)];
  return (Math.acos(dot(upper, lower) / norm(upper) / norm(lower)) * 180) / Math.PI;
};

const upright = skeletonOf(POSES.upright, HANG);
const address = skeletonOf(POSES.address, HOLD);
const top = skeletonOf(POSES.top, HOLD);

function feetOnTheGround(s: Skeleton): void {
  for (const [leg, side] of [
    [s.trail, 1],
    [s.lead, -1],
  ] as const) {
    expect(leg.ankle.y).toBeCloseTo(BUILD.ankle, 9);
    expect(leg.ankle.z).toBeCloseTo((side * BUILD.stance) / 2, 9);
    expect(leg.knee.y).toBeGreaterThan(leg.ankle.y);
    expect(leg.hip.y).toBeGreaterThan(leg.knee.y);
    // Knees bend forward, never back.
    expect(leg.knee.x).toBeGreaterThan((leg.hip.x + leg.ankle.x) / 2 - 0.001);
  }
}

describe('the figure standing upright', () => {
  it('has the head over the neck over the hips over the feet', () => {
    expect(upright.head.y).toBeGreaterThan(upright.neck.y);
    expect(upright.neck.y).toBeGreaterThan(upright.hips.y + 0.4);
    feetOnTheGround(upright);
  });

  it('is as tall as its build, and its head the 7.7th part of that', () => {
    const crown = upright.head.y + BUILD.headHalf;
    expect(crown).toBeGreaterThan(1.7);
    expect(crown).toBeLessThan(1.78);
    expect(crown / (2 * BUILD.headHalf)).toBeGreaterThan(7);
    expect(crown / (2 * BUILD.headHalf)).toBeLessThan(8);
  });

  it('lets both arms hang beside the body, without a club', () => {
    expect(upright.club).toBeNull();
    for (const [arm, side] of [
      [upright.trailArm, 1],
      [upright.leadArm, -1],
    ] as const) {
      expect(arm.fist.y).toBeLessThan(upright.hips.y);
      expect(side * arm.fist.z).toBeGreaterThan(0.15);
      expect(bendDeg(arm)).toBeLessThan(20);
    }
  });
});

describe('the figure at address', () => {
  it('bends from the hips, hips behind the feet and head before them, knees a little bent', () => {
    expect(address.hips.x).toBeLessThan(0);
    expect(address.head.x).toBeGreaterThan(0.15);
    feetOnTheGround(address);
  });

  it.each([1, 2])(
    'has the club head on the ground at the ball (stature does not matter, %i)',
    () => {
      const { club } = address;
      expect(club).not.toBeNull();
      const end = headOfClub(club!);
      expect(end.y).toBeGreaterThan(0);
      expect(end.y).toBeLessThan(0.08);
      expect(apart(end, ballAt(null))).toBeLessThan(0.12);
    },
  );

  it('lets the hands hang under the shoulders, before the thighs', () => {
    const { fist } = address.trailArm;
    expect(fist.y).toBeGreaterThan(0.6);
    expect(fist.y).toBeLessThan(0.85);
    expect(Math.abs(fist.z)).toBeLessThan(0.1);
    expect(fist.x).toBeGreaterThan(address.hips.x + 0.25);
  });

  it('looks down at the ball', () => {
    expect(address.gaze.y).toBeLessThan(-0.2);
    expect(address.gaze.x).toBeGreaterThan(0.5);
  });
});

describe('the figure at the top', () => {
  it('has the hands at about the height of the head, on the trail side, the lead arm across and nearly straight', () => {
    expect(top.trailArm.fist.y).toBeGreaterThan(top.neck.y);
    expect(top.trailArm.fist.z).toBeGreaterThan(0.15);
    expect(bendDeg(top.leadArm)).toBeLessThan(35);
    expect(bendDeg(top.trailArm)).toBeGreaterThan(75);
    expect(bendDeg(top.trailArm)).toBeLessThan(130);
  });

  it('has the trail elbow under the hands', () => {
    expect(top.trailArm.elbow.y).toBeLessThan(top.trailArm.fist.y - 0.1);
  });

  it('keeps the head over the ball: less than 12 cm from where it was at address', () => {
    expect(apart(top.head, address.head)).toBeLessThan(0.12);
    feetOnTheGround(top);
  });

  it('points the club up and toward the target', () => {
    expect(top.club!.along.y).toBeGreaterThan(0.2);
    expect(top.club!.along.z).toBeLessThan(-0.2);
  });
});

describe('both hands', () => {
  const onGrip = (s: Skeleton): void => {
    expect(fromShaft(s.trailArm.fist, s.club!)).toBeLessThan(0.01);
    expect(fromShaft(s.leadArm.fist, s.club!)).toBeLessThan(0.01);
  };

  it('are on the grip within a centimetre for golfers of all kinds at the top', () => {
    fc.assert(fc.property(anyTop, (body) => onGrip(skeletonOf(body, HOLD))));
  });

  it('and at address', () => {
    fc.assert(fc.property(anyAddress, (body) => onGrip(skeletonOf(body, HOLD))));
  });

  it('and all the way between', () => {
    for (let k = 0; k <= 1; k += 0.02) onGrip(skeletonOf(onTheWay(k), HOLD));
  });

  it('never bend an elbow backward: the forearm leans to the front of the trail upper arm at the top', () => {
    fc.assert(
      fc.property(anyTop, (body) => {
        const { trailArm } = skeletonOf(body, HOLD);
        const front = rotate(body.humerus, vec3(1, 0, 0));
        expect(dot(subtract(trailArm.wrist, trailArm.elbow), front)).toBeGreaterThan(0);
      }),
    );
  });
});

describe.each(VIEWS)('seen %s', (view) => {
  const x = (p: Vec3, left = false): number => project(view, left, p).x;

  it('the trail side of a right-handed golfer is on the left face on, and near down the line', () => {
    if (view === 'faceOn') {
      expect(x(upright.trailArm.shoulder)).toBeLessThan(x(upright.leadArm.shoulder));
      expect(x(top.trailArm.fist)).toBeLessThan(x(top.head));
    } else {
      expect(x(address.head)).toBeGreaterThan(x(address.hips));
      expect(x(ballAt(null))).toBeGreaterThan(x(address.head));
    }
  });

  it('a left-handed golfer is the mirror image', () => {
    for (const p of [top.head, top.trailArm.fist, top.lead.knee, headOfClub(top.club!)]) {
      expect(project(view, true, p).x).toBeCloseTo(-project(view, false, p).x, 12);
      expect(project(view, true, p).y).toBe(project(view, false, p).y);
    }
  });
});
