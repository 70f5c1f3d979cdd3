import { gaussian } from '../../../../math/random.ts';
import { radians } from '../../../../math/angle.ts';
import { lastValue, moveTo } from '../channel.ts';
import type { ChannelName } from '../coordinates.ts';
import { UPRIGHT, near } from '../golfer.ts';
import { turnOf } from '../measures.ts';
import { type Scene, between, event, move, pose, segmentsAt, wait } from '../scene.ts';
import { takeAddress } from './address.ts';

/** Movement that a calibration must refuse; faults of the sensors themselves are in the sensor model. */
export type CalibrationMotionFault = 'moving-while-still' | 'wobbly-bow' | 'wobbly-raise';

export interface CalibrationStyle {
  /** Bows and raises: three, or two as in older recordings. */
  readonly repetitions: number;
  /** Shorter pauses, for demonstrations. */
  readonly short: boolean;
  readonly fault: CalibrationMotionFault | null;
}

/** RMS rate off the axis over RMS rate about it, each of two axes: out and back within each half. */
const WOBBLE: readonly [number, number] = [0.035, 0.065];
const BAD_WOBBLE: readonly [number, number] = [0.28, 0.36];
/** Spread of the off-axis angle that grows and falls with the movement itself. */
const SKEW = 0.012;

/** Out-and-back of a side joint during both halves of a movement of `size` rad. */
function wobble(
  scene: Scene,
  name: ChannelName,
  size: number,
  times: readonly [number, number, number],
  ratio: readonly [number, number],
): void {
  const rest = lastValue(scene.score.channels[name]);
  const skew = size * SKEW * gaussian(scene.random);
  const [t0, t1, t2] = times;
  // Out and back in half the time each doubles the RMS rate of the same size, hence the half.
  const out = (): number => (scene.random() < 0.5 ? -1 : 1) * size * 0.5 * between(scene, ...ratio);
  move(scene, name, rest + skew / 2 + out(), t0, (t0 + t1) / 2);
  move(scene, name, rest + skew, (t0 + t1) / 2, t1);
  move(scene, name, rest + skew / 2 + out(), t1, (t1 + t2) / 2);
  move(scene, name, rest, (t1 + t2) / 2, t2);
}

interface Exercise {
  readonly type: 'calibration-bow' | 'calibration-armRaise';
  readonly main: ChannelName;
  readonly sides: readonly [ChannelName, ChannelName];
  /** deg */
  readonly size: readonly [number, number];
  readonly bad: boolean;
}

/** One there and back; returns when it is over. */
function once(scene: Scene, exercise: Exercise): void {
  const size = radians(between(scene, ...exercise.size));
  const t0 = scene.nowS;
  const t1 = t0 + between(scene, 1, 1.35);
  const t2 = t1 + between(scene, 1, 1.35);
  const channel = scene.score.channels[exercise.main];
  const rest = lastValue(channel);
  moveTo(channel, rest + size, t0, t1);
  moveTo(channel, rest, t1, t2);
  for (const side of exercise.sides) {
    wobble(scene, side, size, [t0, t1, t2], exercise.bad ? BAD_WOBBLE : WOBBLE);
  }
  if (exercise.type === 'calibration-bow') {
    // The arms keep hanging, more or less.
    const hang = lastValue(scene.score.channels.elevation);
    const share = between(scene, 0.6, 0.95);
    move(scene, 'elevation', hang + size * share, t0, t1);
    move(scene, 'elevation', hang, t1, t2);
  }
  wait(scene, t2 - t0);
}

function repeat(scene: Scene, what: Exercise, repetitions: number): void {
  for (let i = 0; i < repetitions; i++) {
    once(scene, what);
    wait(scene, between(scene, 0.25, 0.5));
  }
}

function exercise(scene: Scene, what: Exercise, repetitions: number): void {
  const onsetS = scene.nowS;
  wait(scene, 0.3);
  repeat(scene, what, repetitions);
  event(scene, what.type, onsetS, scene.nowS - onsetS);
}

const bowing = (bad: boolean): Exercise => ({
  type: 'calibration-bow',
  main: 'flexion',
  sides: ['lateral', 'turn'],
  size: [38, 55],
  bad,
});

const raising = (bad: boolean): Exercise => ({
  type: 'calibration-armRaise',
  main: 'elevation',
  sides: ['plane', 'externalRotation'],
  size: [80, 95],
  bad,
});

/** The movements alone: who asked for them knows when they were. */
export const bow = (scene: Scene, times: number): void => repeat(scene, bowing(false), times);
export const raiseArm = (scene: Scene, times: number): void => repeat(scene, raising(false), times);

function stand(scene: Scene, seconds: number, moving: boolean): void {
  event(scene, 'calibration-stand', scene.nowS, seconds);
  const untilS = scene.nowS + seconds;
  while (moving && untilS - scene.nowS > 0.9) {
    const takes = between(scene, 0.4, 0.8);
    pose(scene, near(scene.random, UPRIGHT, 8), scene.nowS, scene.nowS + takes);
    wait(scene, takes);
  }
  scene.nowS = untilS;
}

/** Settles upright with arms hanging: off the defining posture by a few tenths of a degree. */
export function settle(scene: Scene, seconds: number): void {
  pose(scene, near(scene.random, UPRIGHT, 0.3), scene.nowS, scene.nowS + seconds);
  wait(scene, seconds);
}

function addressReference(scene: Scene): void {
  takeAddress(scene, 0.9);
  const middle = scene.nowS + 1;
  event(scene, 'address-reference', scene.nowS, 2);
  wait(scene, 2);
  scene.addressTurn = turnOf(segmentsAt(scene)(middle).thorax);
}

/** All steps in order: stand, bows, raises, stand, address. */
export function calibrate(scene: Scene, style: CalibrationStyle): void {
  const pause = style.short ? 0.6 : 1.3;
  wait(scene, style.short ? 0.8 : 1.5);
  stand(scene, 3, style.fault === 'moving-while-still');
  settle(scene, pause);
  exercise(scene, bowing(style.fault === 'wobbly-bow'), style.repetitions);
  wait(scene, pause);
  exercise(scene, raising(style.fault === 'wobbly-raise'), style.repetitions);
  settle(scene, pause);
  wait(scene, 0.5);
  stand(scene, 2, false);
  wait(scene, 0.3);
  addressReference(scene);
  wait(scene, between(scene, 0.3, 0.8));
}
