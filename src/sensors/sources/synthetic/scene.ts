import { type Random, seededRandom, uniform } from '../../../math/random.ts';
import type { SessionEvent } from '../../sessionEvent.ts';
import { type Jet, addKnot, jet, moveTo } from './channel.ts';
import type { ChannelName } from './coordinates.ts';
import { figureAt, segmentsOf } from './figure.ts';
import { type Golfer, UPRIGHT, createGolfer, near } from './golfer.ts';
import type { SegmentState } from './measures.ts';
import { type JointName, JOINTS, type Pose, angleIn } from './pose.ts';
import { type Score, createScore } from './score.ts';
import { createTexture } from './texture.ts';
import type { TruthDistractor, TruthRepetition } from './truth.ts';

/** The plan under construction: each movement appends to the score and moves `nowS` on. */
export interface Scene {
  readonly random: Random;
  readonly golfer: Golfer;
  readonly score: Score;
  /** All is planned up to here; the body rests then. */
  nowS: number;
  /** Heading of the thorax at the address reference, rad. */
  addressTurn: number;
  /** True while the golfer stands over the ball. */
  atAddress: boolean;
  readonly events: SessionEvent[];
  readonly repetitions: TruthRepetition[];
  readonly distractors: TruthDistractor[];
}

export function createScene(seed: number, unrest = 1): Scene {
  const random = seededRandom(seed);
  const golfer = createGolfer(random);
  const scene: Scene = {
    random,
    golfer,
    score: createScore(createTexture(random), unrest),
    nowS: 0,
    addressTurn: 0,
    atAddress: false,
    events: [],
    repetitions: [],
    distractors: [],
  };
  const start = near(random, UPRIGHT, 0.3);
  for (const joint of JOINTS) addKnot(scene.score.channels[joint], 0, jet(angleIn(start, joint)));
  return scene;
}

export const between = (scene: Scene, low: number, high: number): number =>
  uniform(scene.random, low, high);

export const chance = (scene: Scene, probability: number): boolean => scene.random() < probability;

export const wait = (scene: Scene, seconds: number): void => {
  scene.nowS += seconds;
};

export const move = (
  scene: Scene,
  name: ChannelName,
  x: number,
  fromS: number,
  toS: number,
): void => moveTo(scene.score.channels[name], x, fromS, toS);

export const pass = (scene: Scene, name: ChannelName, timeS: number, at: Jet): void =>
  addKnot(scene.score.channels[name], timeS, at);

/** Moves the named joints to a pose, from rest to rest. */
export function pose(
  scene: Scene,
  target: Pose,
  fromS: number,
  toS: number,
  joints: readonly JointName[] = JOINTS,
): void {
  for (const joint of joints) move(scene, joint, angleIn(target, joint), fromS, toS);
}

export const segmentsAt =
  (scene: Scene) =>
  (timeS: number): SegmentState =>
    segmentsOf(figureAt(scene.golfer.build, scene.score, timeS));

export const event = (
  scene: Scene,
  type: SessionEvent['type'],
  onsetS: number,
  durationS: number,
): void => {
  scene.events.push({ type, onsetS, durationS, value: null });
};
