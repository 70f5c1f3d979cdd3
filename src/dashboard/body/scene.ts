import type { Vec3 } from '../../math/vec3.ts';
import { BUILD } from './build.ts';
import { circle } from './outline.ts';
import { type ViewName, project } from './project.ts';

/** Left edge of the picture of a right-handed golfer, m: the arms reach to the trail side, the ball lies ahead. */
const LEFT = { faceOn: -0.88, downTheLine: -0.7 } as const;
const WIDE = 1.58;
const BELOW = 0.08;
/** Room above the ground, m: for a raised club; in the low panel of the practice, where the end of one sticks out; for a body. */
const ABOVE = { club: 2.4, practice: 2, body: 1.84 } as const;

export function viewBoxOf(view: ViewName, leftHanded: boolean, room: keyof typeof ABOVE): string {
  const left = leftHanded ? -LEFT[view] - WIDE : LEFT[view];
  return `${left.toFixed(2)} ${-ABOVE[room]} ${WIDE} ${ABOVE[room] + BELOW}`;
}

/** The floor, where the feet stand. */
export const GROUND = 'M-2 0H2';

export const ballPath = (view: ViewName, leftHanded: boolean, ball: Vec3): string =>
  circle(project(view, leftHanded, ball), BUILD.ball);
