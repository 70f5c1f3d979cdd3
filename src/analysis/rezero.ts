import { clamp, degrees, radians, wrapPi } from '../math/angle.ts';
import { thoraxAngles } from '../body/angles.ts';
import { BRIDGED_S } from '../orientation/track.ts';
import { type Headings, headingOf } from '../body/pose.ts';
import type { BodyFrame } from '../body/segments.ts';
import { rotateInverse } from '../math/quat.ts';
import { type Vec3, UNIT_Y, dot, lerp, norm, scale, subtract, vec3 } from '../math/vec3.ts';

/**
 * A heading that drifts at a nearly steady rate, seen against a reference that was itself one address
 * among many: a Kalman filter of three states. Plain data.
 */
interface Drift {
  /** What is taken off per second, rad/s. */
  rate: number;
  /** How far the usual address lies from the reference, rad. */
  usual: number;
  /** Covariance of heading error (rad), rate and usual address, rows; the heading error itself is kept at 0. */
  covariance: [Vec3, Vec3, Vec3];
}

/** Where up is, seen from the trunk and from the arm: nothing of it drifts. */
interface AddressLook {
  trunk: Vec3;
  arm: Vec3;
}

/**
 * Without magnetometers both headings drift, mostly by what is left of the gyro bias. At every
 * still address they are drawn back to what they were at the address reference, as far as each can
 * be trusted, and the rate of the drift is learned so that it can be taken off in between.
 */
export interface RezeroState {
  readonly turn: Drift;
  readonly arm: Drift;
  atS: number | null;
  /** Session s of the last still address. */
  lastS: number | null;
  /** Session s of the last frame with both sensors there. */
  wholeS: number | null;
  /** What the still addresses look like by gravity alone; a guess until there was one. */
  look: AddressLook;
  /** There was a still address. */
  seen: boolean;
  /** Nobody knows where the person turned while samples were missing. */
  astray: boolean;
}

/** Choices of the design, from simulation: rad, rad/s, per root of a second. */
const TURN = {
  rate: radians(0.08),
  wander: radians(0.04),
  rateWander: radians(0.003),
  setup: radians(3),
};
const ARM = {
  rate: radians(0.3),
  wander: radians(0.1),
  rateWander: radians(0.004),
  setup: radians(3),
};
type Noise = typeof TURN;

/** What a gap in a movement may do to a heading, rad. */
const AFTER_GAP = radians(5);
/** After a silence in which the person may have turned anywhere. */
const ANYWHERE = Math.PI;

/**
 * An address is one that looks like the others, deg; the end of a rehearsal has the arm 25 deg farther out and the
 * trunk bent 30 deg to the side.
 */
const ALIKE_DEG = { trunk: 15, arm: 15 };
/** As long as there was none to compare with. */
const LIKELY_DEG = { trunk: 25, arm: 30 };
/** The look of the addresses is learned by this share a second. */
const LEARN_LOOK = 0.5;

/** How near to the reference an address must be, deg, and in standard deviations where the heading is less sure. */
const NEAR_DEG = 15;
const NEAR_SIGMA = 5;
/** Less sure than this, deg, a heading is no judge of what is an address: after a break of some minutes. */
const UNSURE_DEG = 7.5;
/** A still address lasts many samples that all err alike; they count as one look a second. */
const LOOKS_PER_S = 1;

const createDrift = (n: Noise): Drift => ({
  rate: 0,
  usual: 0,
  covariance: [vec3(0, 0, 0), vec3(0, n.rate * n.rate, 0), vec3(0, 0, n.setup * n.setup)],
});

const UNSEEN_LOOK: AddressLook = { trunk: vec3(-0.57, 0.82, 0), arm: vec3(0, 1, 0) };

export const createRezero = (): RezeroState => ({
  turn: createDrift(TURN),
  arm: createDrift(ARM),
  atS: null,
  lastS: null,
  wholeS: null,
  seen: false,
  look: UNSEEN_LOOK,
  astray: false,
});

/** A new address reference: both headings are 0 there. How fast they drift is as well known as before. */
export function takeReference(s: RezeroState): void {
  for (const [drift, noise] of [
    [s.turn, TURN],
    [s.arm, ARM],
  ] as const) {
    const rate = drift.covariance[1].y;
    Object.assign(drift, createDrift(noise), { rate: drift.rate });
    drift.covariance[1] = vec3(0, rate, 0);
  }
  Object.assign(s, { seen: false, look: UNSEEN_LOOK, astray: false });
}

/** Each frame: takes off what the headings have drifted since the one before. */
export function followDrift(
  s: RezeroState,
  { timeS, gap }: { readonly timeS: number; readonly gap: boolean },
  headings: Headings,
): void {
  const dt = s.atS === null ? 0 : Math.max(0, timeS - s.atS);
  s.atS = timeS;
  predict(s.turn, TURN, dt);
  predict(s.arm, ARM, dt);
  if (gap) {
    unsettle(s, AFTER_GAP);
    if (!s.astray && s.wholeS !== null && timeS - s.wholeS > BRIDGED_S) {
      s.astray = true;
      unsettle(s, ANYWHERE);
    }
  } else s.wholeS = timeS;
  headings.chest -= s.turn.rate * dt;
  headings.trailArm -= (s.turn.rate + s.arm.rate) * dt;
}

/** Drift or a silence has gone on for so long that the headings cannot say whether the person is at address. */
export const isUnsure = ({ turn, arm }: RezeroState): boolean =>
  Math.max(sigmaDeg(turn), sigmaDeg(arm)) > UNSURE_DEG;

const sigmaDeg = ({ covariance: [h] }: Drift): number => degrees(Math.sqrt(h.x));

const isNear = (d: Drift, error: number): boolean =>
  Math.abs(degrees(error)) <= Math.max(NEAR_DEG, NEAR_SIGMA * sigmaDeg(d));

/**
 * One frame of a still address: moves `headings` a little toward the reference; where they are unsure or astray it
 * finds them again, as near as people set up alike.
 */
export function rezero(
  s: RezeroState,
  frame: BodyFrame,
  headings: Headings,
  armAtAddress: number,
): void {
  const turn = wrapPi(thoraxAngles(frame.thorax).turn);
  const arm = wrapPi(headingOf(frame.humerus) - turn - armAtAddress);
  if (frame.gap || !isNear(s.turn, turn) || !isNear(s.arm, arm)) return;
  // the end of a swing may be still, and face the target, too
  if ((s.seen || isUnsure(s)) && !looksSet(s, frame)) return;
  const since = s.lastS === null ? 0 : frame.timeS - s.lastS;
  s.lastS = frame.timeS;
  const look = Math.min(since, 0.1) * LOOKS_PER_S;
  if (!(look > 0)) return;
  learnLook(s, frame, look);
  const turnBy = correct(s.turn, TURN, turn, look);
  headings.chest -= turnBy;
  headings.trailArm -= turnBy + correct(s.arm, ARM, arm, look);
  s.astray = false;
}

/** By gravity alone it looks like the still addresses before. */
export function looksSet({ look, seen }: RezeroState, frame: BodyFrame): boolean {
  const { trunk, arm } = lookOf(frame);
  const most = seen ? ALIKE_DEG : LIKELY_DEG;
  return apartDeg(trunk, look.trunk) < most.trunk && apartDeg(arm, look.arm) < most.arm;
}

const lookOf = (frame: BodyFrame): AddressLook => ({
  trunk: rotateInverse(frame.thorax, UNIT_Y),
  arm: rotateInverse(frame.humerus, UNIT_Y),
});

const apartDeg = (a: Vec3, b: Vec3): number =>
  degrees(Math.acos(clamp(dot(a, b) / (norm(a) * norm(b)), -1, 1)));

function learnLook(s: RezeroState, frame: BodyFrame, look: number): void {
  const { trunk, arm } = lookOf(frame);
  // the arm's is quite unknown before the first address: it is turned about its own axis as the calibration found it
  const share = s.seen ? LEARN_LOOK * look : 1;
  s.seen = true;
  s.look = { trunk: lerp(s.look.trunk, trunk, share), arm: lerp(s.look.arm, arm, share) };
}

function predict(d: Drift, n: Noise, dt: number): void {
  const [h, r, u] = d.covariance;
  // the heading grows by rate x time; x, y, z of a row stand for heading, rate, usual address
  const hh = h.x + dt * (2 * h.y + dt * r.y) + n.wander * n.wander * dt;
  const hr = h.y + dt * r.y;
  const hu = h.z + dt * r.z;
  const rr = r.y + n.rateWander * n.rateWander * dt;
  d.covariance = [vec3(hh, hr, hu), vec3(hr, rr, r.z), vec3(hu, r.z, u.z)];
}

function unsettle(s: RezeroState, by: number): void {
  for (const d of [s.turn, s.arm]) {
    const [h, r, u] = d.covariance;
    d.covariance = [vec3(h.x + by * by, h.y, h.z), r, u];
  }
}

/** Takes a look at the error of a heading, rad; returns how much of it is drift. */
function correct(d: Drift, n: Noise, error: number, look: number): number {
  const [h, r, u] = d.covariance;
  const ph = vec3(h.x + h.z, r.x + r.z, u.x + u.z);
  const k = scale(ph, 1 / (ph.x + ph.z + (n.setup * n.setup) / look));
  const surprise = error - d.usual;
  d.rate += k.y * surprise;
  d.usual += k.z * surprise;
  d.covariance = [
    subtract(h, scale(ph, k.x)),
    subtract(r, scale(ph, k.y)),
    subtract(u, scale(ph, k.z)),
  ];
  return k.x * surprise;
}
