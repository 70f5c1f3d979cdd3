import { type Vec3, vec3 } from '../../math/vec3.ts';

/** Stature that everything is drawn for, m: a figure, nobody's measure. */
const STATURE = 1.75;
/** A share of the stature, m. */
const of = (share: number): number => share * STATURE;

/**
 * Segment lengths, m, as shares of the stature after Drillis and Contini 1966, as in Winter 2009,
 * Biomechanics and Motor Control of Human Movement, fig. 4.1 (values from memory). The lengths of the
 * club are those of a middle iron (from memory).
 */
export const BUILD = {
  ankle: of(0.039),
  shank: of(0.246),
  thigh: of(0.245),
  footLength: of(0.152),
  /** From the middle between the hip joints. */
  hipJoint: of(0.055),
  hipsHalf: of(0.0955),
  /** Hip joints to the lowest lumbar joint, pelvis axes. */
  lumbar: vec3(of(-0.012), of(0.062), 0),
  /** Lumbar joint to the line of the shoulders: the rest of hips 0.530 to shoulders 0.818. */
  trunk: of(0.226),
  shouldersHalf: of(0.12),
  waistHalf: of(0.086),
  chestDepth: of(0.062),
  waistDepth: of(0.058),
  upperArm: of(0.186),
  forearm: of(0.146),
  /** Wrist to the middle of the closed hand. */
  fist: of(0.04),
  hand: of(0.108),
  /** Shoulder line to the middle of the head: neck, then half of the head's 0.13. */
  neck: of(0.052),
  headHalf: of(0.066),
  headWide: of(0.049),
  /** Between the ankles: about the width of the shoulders. */
  stance: of(0.25),
  /** Along the shaft from the middle of the grip: to its end, and to the head. */
  butt: 0.12,
  shaft: 0.82,
  clubHead: 0.075,
  ball: 0.0335,
} as const;

/** The ankle of one side, room: X ahead, Y up, Z to the trail side, from the ground between the feet. */
export const ankleOf = (side: 1 | -1): Vec3 => vec3(0, BUILD.ankle, (side * BUILD.stance) / 2);
