import { describe, expect, it } from 'vitest';
import { figure, hull, project } from '../../src/dashboard/body/project.ts';
import { radians } from '../../src/math/angle.ts';
import { IDENTITY, aboutY, aboutZ, multiply } from '../../src/math/quat.ts';
import { vec3 } from '../../src/math/vec3.ts';

const still = { thorax: IDENTITY, humerus: IDENTITY };
const bent = (deg: number) => ({ ...still, thorax: aboutZ(radians(-deg)) });

describe('the body views', () => {
  it('show the right side of a right-handed golfer on the left when seen face on', () => {
    expect(project('faceOn', false, vec3(0, 0, 1)).x).toBeLessThan(0);
    expect(figure('faceOn', false, still).arm[0].x).toBeLessThan(0);
  });

  it('show down the line with the ball on the right of a right-handed golfer', () => {
    expect(project('downTheLine', false, vec3(1, 0, 0)).x).toBeGreaterThan(0);
  });

  it('show a left-handed golfer as the mirror image', () => {
    for (const view of ['faceOn', 'downTheLine'] as const) {
      const right = figure(view, false, bent(30));
      const left = figure(view, true, bent(30));
      expect(left.head.x).toBeCloseTo(-right.head.x, 12);
      expect(left.arm[1].y).toBeCloseTo(right.arm[1].y, 12);
    }
  });

  it('lean the head toward the ball when the trunk bends forward', () => {
    expect(figure('downTheLine', false, bent(40)).head.x).toBeGreaterThan(0.4);
    expect(figure('faceOn', false, bent(40)).head.x).toBeCloseTo(0, 12);
  });

  it('turn the chest from the viewer when it turns away from the target', () => {
    const turned = (deg: number) => ({ ...still, thorax: aboutY(radians(deg)) });
    expect(figure('faceOn', false, turned(0)).facing).toBe(true);
    expect(figure('faceOn', false, turned(-100)).facing).toBe(false);
    expect(figure('downTheLine', false, turned(-60)).facing).toBe(true);
  });

  it('let the arm hang down from the shoulder and rise forward with the elbow', () => {
    const hanging = figure('downTheLine', false, still).arm;
    expect(hanging[1].y - hanging[0].y).toBeCloseTo(0.31, 9);
    const raised = figure('downTheLine', false, {
      ...still,
      humerus: multiply(IDENTITY, aboutZ(radians(90))),
    }).arm;
    expect(raised[1].x - raised[0].x).toBeCloseTo(0.31, 9);
  });

  it('outline a box by its corners only', () => {
    const square = [
      { x: 0, y: 0 },
      { x: 1, y: 0 },
      { x: 1, y: 1 },
      { x: 0, y: 1 },
      { x: 0.5, y: 0.5 },
      { x: 0.5, y: 0 },
    ];
    expect(hull(square)).toHaveLength(4);
  });
});
