import { STANDARD_GRAVITY } from '../../../math/gravity.ts';
import type { SimulatedDevice } from './worn.ts';
import { type Vec3, ZERO, scale, vec3 } from '../../../math/vec3.ts';
import { rotateInverse } from '../../../math/quat.ts';
import { GROUND, type Kinematics, carry, displaced, turnAbout, upright } from './chain.ts';
import { type Jet, REST, addJets, jet, scaleJet } from './channel.ts';
import type { Coordinates } from './coordinates.ts';
import { type Score, coordinatesAt } from './score.ts';
import { shockDisplacement } from './shock.ts';
import type { SegmentState } from './measures.ts';

/** Lengths of one golfer, m, each in the frame of the part it belongs to (X forward, Y up, Z right). */
export interface Build {
  readonly hipHeight: number;
  /** Hip centre to the lowest lumbar joint, pelvis frame. */
  readonly lumbar: Vec3;
  /** Lumbar joint to the breastbone, thorax frame. */
  readonly breastbone: Vec3;
  /** Lumbar joint to the trail shoulder, thorax frame. */
  readonly shoulder: Vec3;
  /** Shoulder to the sensor on the outside of the upper arm, humerus frame. */
  readonly armSensor: Vec3;
}

/** Lengths near those of a person of 1.75 m (from memory of anthropometric tables), scaled. */
export const buildOf = (stature: number): Build => {
  const k = stature / 1.75;
  return {
    hipHeight: 0.94 * k,
    lumbar: scale(vec3(-0.03, 0.1, 0), k),
    breastbone: scale(vec3(0.13, 0.3, 0), k),
    shoulder: scale(vec3(0.01, 0.38, 0.18), k),
    armSensor: scale(vec3(0, -0.25, 0.045), k),
  };
};

export interface Figure {
  readonly thorax: Kinematics;
  readonly humerus: Kinematics;
}

// Share of the thorax's angles that the pelvis makes; the lumbar spine makes the rest.
const PELVIS = { turn: 0.5, lateral: 0.3, flexion: 0.6 };
const negative = (j: Jet): Jet => scaleJet(j, -1);

/** Pelvis on the hips, thorax on the pelvis, humerus in the thorax; each at its joint. */
function figureOf(build: Build, c: Coordinates): Figure {
  let pelvis = displaced(GROUND, c.hipX, addJets(c.hipY, jet(build.hipHeight)), c.hipZ);
  pelvis = turnAbout(pelvis, 'y', addJets(c.heading, scaleJet(c.turn, PELVIS.turn)));
  pelvis = turnAbout(pelvis, 'x', scaleJet(c.lateral, PELVIS.lateral));
  pelvis = turnAbout(pelvis, 'z', scaleJet(c.flexion, -PELVIS.flexion));
  let thorax = upright(carry(pelvis, build.lumbar));
  thorax = turnAbout(thorax, 'y', addJets(c.heading, c.turn));
  thorax = turnAbout(thorax, 'x', c.lateral);
  thorax = turnAbout(thorax, 'z', negative(c.flexion));
  let humerus = carry(thorax, build.shoulder);
  humerus = turnAbout(humerus, 'y', c.plane);
  humerus = turnAbout(humerus, 'x', negative(c.elevation));
  humerus = turnAbout(humerus, 'y', negative(c.externalRotation));
  return { thorax, humerus };
}

export const figureAt = (build: Build, score: Score, timeS: number): Figure =>
  figureOf(build, coordinatesAt(score, timeS));

export const segmentsOf = ({ thorax, humerus }: Figure): SegmentState => ({
  thorax: thorax.q,
  humerus: humerus.q,
  thoraxRate: rotateInverse(thorax.q, thorax.rate),
  humerusRate: rotateInverse(humerus.q, humerus.rate),
});

const still = (j: Jet): boolean => j.x === 0 && j.v === 0 && j.a === 0;

/** The point of the body where a sensor sits, in the segment's axes (or loose, once taken off). */
export function sensorSite(
  build: Build,
  score: Score,
  sensor: SimulatedDevice,
  timeS: number,
): Kinematics {
  if (sensor === 'club') return clubSite(build, score, timeS);
  const c = coordinatesAt(score, timeS);
  const figure = figureOf(build, c);
  const onBody =
    sensor === 'chest'
      ? carry(figure.thorax, build.breastbone)
      : carry(figure.humerus, build.armSensor);
  const blow = shockDisplacement(score.shocks, sensor === 'chest' ? 'chest' : 'arm', timeS);
  const site = displaced(onBody, blow.x, blow.y, blow.z);
  if (still(c.looseX) && still(c.looseY)) return site;
  const lowered = displaced(site, REST, negative(c.looseDrop), REST);
  return turnAbout(turnAbout(lowered, 'x', c.looseX), 'y', c.looseY);
}

/** From the trail shoulder down to the hands, humerus axes, m: the forearm bent a little. */
const HANDS = vec3(0.08, -0.52, -0.05);
/** What a hand does to the club against what the arm feels of a blow. */
const CLUB_BLOW = 4;

/** Under the grip's end: carried by the hands, falling free, or lying where it landed. */
function clubSite(build: Build, score: Score, timeS: number): Kinematics {
  const held = carry(figureAt(build, score, timeS).humerus, HANDS);
  const fall = score.falls.find((f) => timeS >= f.fromS && timeS < (f.liesUntilS ?? f.toS));
  if (fall === undefined) {
    const blow = shockDisplacement(score.shocks, 'arm', timeS);
    const by = (j: Jet): Jet => scaleJet(j, CLUB_BLOW);
    return displaced(held, by(blow.x), by(blow.y), by(blow.z));
  }
  const acceleration = timeS < fall.toS ? vec3(0, -STANDARD_GRAVITY, 0) : ZERO;
  return { ...held, acceleration, rate: ZERO, angularAcc: ZERO };
}
