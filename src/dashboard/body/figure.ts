import { rotate } from '../../math/quat.ts';
import { type Vec3, add, lerp, norm, normalise, scale, subtract, vec3 } from '../../math/vec3.ts';
import {
  FOREARM,
  armAlong,
  elbowOf,
  forearmAt,
  handsAt,
  hangingHand,
  leadArmTo,
  leadReachOf,
  shoulderOf,
} from './arms.ts';
import { BUILD } from './build.ts';
import { heldClub } from './club.ts';
import { POSES } from './poses.ts';
import { trunkOf } from './trunk.ts';
import type { Arm, Club, Segments, Skeleton } from './skeleton.ts';

/** What the hands do; bends of the trail elbow in rad. */
export type Hands =
  /** Both hang, without a club. */
  | { readonly do: 'hang'; readonly bend?: number }
  /** Both are on the grip. */
  | { readonly do: 'hold' }
  /**
   * Both open (0 to 1), the trail one on its way (0 to 1) to where it catches; `club: null`: still in them.
   */
  | {
      readonly do: 'wait';
      readonly open: number;
      readonly way: number;
      readonly bend: number;
      readonly club: Club | null;
    }
  /** The trail hand has the club, given from the hand in the humerus' axes. */
  | { readonly do: 'carry'; readonly bend: number; readonly inHand: Club };

/** From the middle of the grip to either hand, m. */
const ON_GRIP = 0.045;
/** How much farther apart open hands are, m. */
const APART = 0.1;
/** Corrections until hands and club agree. */
const GRIP_ROUNDS = 3;
/** Bend of an elbow that hangs, rad. */
const RELAXED = 0.2;
/** About where a ball lies, m: what the head looks at where no more is known. */
const BALL = vec3(0.78, BUILD.ball, 0);

const turned = ({ humerus }: Segments, from: Vec3, { grip, along, toe }: Club): Club => ({
  grip: add(from, rotate(humerus, grip)),
  along: rotate(humerus, along),
  toe: rotate(humerus, toe),
});

interface Arms {
  readonly trailArm: Arm;
  readonly leadArm: Arm;
  readonly trailOpen: number;
  readonly leadOpen: number;
  readonly club: Club | null;
}

function hanging(s: Segments, neck: Vec3, bend: number): Arms {
  const shoulder = shoulderOf(1, neck, s);
  const trailArm = armAlong(shoulder, elbowOf(shoulder, s), forearmAt(s, bend));
  const leadArm = leadArmTo(hangingHand(neck, s), neck, s);
  return { trailArm, leadArm, trailOpen: 0, leadOpen: 0, club: null };
}

/** Hands and club together: the lead hand is higher on the grip, and it is its arm that is nearly straight. */
function gripped(s: Segments, neck: Vec3, elbow: Vec3): { hands: Vec3; club: Club } {
  const lead = shoulderOf(-1, neck, s);
  const wanted = leadReachOf(s);
  let leadReach = wanted + 2 * ON_GRIP;
  for (let again = 0; ; again++) {
    const hands = handsAt(s, neck, elbow, leadReach);
    const club = heldClub(hands, neck, s);
    if (again === GRIP_ROUNDS) return { hands, club };
    const leadHand = add(hands, scale(club.along, -2 * ON_GRIP));
    leadReach += wanted - norm(subtract(leadHand, lead));
    leadReach = Math.min(wanted + 2 * ON_GRIP, Math.max(wanted - 2 * ON_GRIP, leadReach));
  }
}

function withClub(s: Segments, neck: Vec3, hands: Exclude<Hands, { do: 'hang' }>): Arms {
  const shoulder = shoulderOf(1, neck, s);
  const elbow = elbowOf(shoulder, s);
  const { hands: meeting, club: held } = gripped(s, neck, elbow);
  const toMeeting = scale(subtract(meeting, elbow), 1 / FOREARM);
  const leadAt = (apart: number): Arm =>
    leadArmTo(add(meeting, scale(held.along, -2 * ON_GRIP - apart)), neck, s);
  const onGrip = { ...held, grip: add(meeting, scale(held.along, -ON_GRIP)) };
  if (hands.do === 'hold')
    return {
      trailArm: armAlong(shoulder, elbow, toMeeting),
      leadArm: leadAt(0),
      trailOpen: 0,
      leadOpen: 0,
      club: onGrip,
    };
  const catching = forearmAt(s, hands.bend);
  if (hands.do === 'carry') {
    const trailArm = armAlong(shoulder, elbow, catching);
    const club = turned(s, trailArm.fist, hands.inHand);
    return { trailArm, leadArm: leadAt(APART), trailOpen: 0, leadOpen: 1, club };
  }
  const forearm = normalise(lerp(toMeeting, catching, hands.way)) ?? catching;
  return {
    trailArm: armAlong(shoulder, elbow, forearm),
    leadArm: leadAt(APART * hands.open),
    trailOpen: hands.open,
    leadOpen: hands.open,
    club: hands.club ?? onGrip,
  };
}

/** The whole body to two measured segments, standing on the ground. */
export function skeletonOf(s: Segments, hands: Hands, ball: Vec3 = BALL): Skeleton {
  const trunk = trunkOf(s.thorax, ball);
  const arms =
    hands.do === 'hang'
      ? hanging(s, trunk.neck, hands.bend ?? RELAXED)
      : withClub(s, trunk.neck, hands);
  return { ...s, ...trunk, ...arms };
}

/** From the end of the shaft at address to the ball before the head, m. */
const BEFORE_CLUB = vec3(0.04, 0, -0.045);

/** The ball before the club of that address; of the drawings' where it is not known, or no address, m. */
export function ballAt(address: Segments | null): Vec3 {
  const { club } = skeletonOf(address ?? POSES.address, { do: 'hold' });
  if (club === null) return BALL;
  const end = add(club.grip, scale(club.along, BUILD.shaft));
  const onGround = end.y < 0.15 && end.x > 0.45 && end.x < 1;
  const at = add(end, BEFORE_CLUB);
  return onGround ? vec3(at.x, BUILD.ball, at.z) : BALL;
}
