import { radians } from '../../../../math/angle.ts';
import { rotate } from '../../../../math/quat.ts';
import { UNIT_X, UNIT_Y, scale } from '../../../../math/vec3.ts';
import { jet, lastValue } from '../channel.ts';
import { figureAt } from '../figure.ts';
import type { ChannelName } from '../coordinates.ts';
import { UPRIGHT, near } from '../golfer.ts';
import { type Scene, between, chance, move, pass, pose, wait } from '../scene.ts';
import type { DistractorKind } from '../script.ts';
import { getReady, standUp, takeAddress, waggle } from './address.ts';
import { backswing } from './backswing.ts';

const last = (scene: Scene, name: ChannelName): number => lastValue(scene.score.channels[name]);

/** One foot lands: felt by both sensors. */
function footfall(scene: Scene, timeS: number): void {
  const size = between(scene, 1, 3);
  scene.score.shocks.push({
    timeS,
    scaleS: between(scene, 0.012, 0.02),
    chest: scale(UNIT_Y, size),
    arm: scale(UNIT_Y, size * between(scene, 0.6, 1)),
    armSwing: 0,
  });
}

interface Steps {
  readonly count: number;
  /** Turn of the feet over all of them, rad. */
  readonly headingBy: number;
  /** m/s */
  readonly speed: number;
}

/** Some steps along the heading of the feet: bob, sway, counter-turn of the trunk, swinging arm. */
function steps(scene: Scene, { count, headingBy, speed }: Steps): void {
  const takes = between(scene, 0.5, 0.58);
  const heading = last(scene, 'heading');
  const fromS = scene.nowS;
  const untilS = fromS + count * takes;
  if (headingBy !== 0) move(scene, 'heading', heading + headingBy, fromS, untilS);
  const reach = speed * takes * count;
  move(scene, 'hipX', last(scene, 'hipX') + reach * Math.cos(heading), fromS, untilS);
  move(scene, 'hipZ', last(scene, 'hipZ') - reach * Math.sin(heading), fromS, untilS);
  const home = (['turn', 'lateral', 'elevation'] as const).map((n) => [n, last(scene, n)] as const);
  const height = last(scene, 'hipY');
  const size = { turn: radians(6), lateral: radians(1.5), elevation: radians(14) };
  for (let i = 0; i < count; i++) {
    const t = fromS + i * takes;
    const side = i === count - 1 ? 0 : i % 2 === 0 ? 1 : -1;
    for (const [name, rest] of home) {
      move(scene, name, rest + side * size[name] * between(scene, 0.8, 1.2), t, t + takes);
    }
    move(scene, 'hipY', height + 0.025, t, t + takes / 2);
    move(scene, 'hipY', height, t + takes / 2, t + takes);
    footfall(scene, t + takes * between(scene, 0.95, 1));
  }
  wait(scene, count * takes);
}

/** About-turn, off, about-turn, back; the feet end within a degree of where they were. */
function walk(scene: Scene): void {
  if (scene.atAddress) standUp(scene, 0.5);
  const way = { count: chance(scene, 0.5) ? 5 : 7, headingBy: 0, speed: between(scene, 1, 1.3) };
  const about = { count: 3, headingBy: Math.PI, speed: 0.15 };
  steps(scene, about);
  steps(scene, way);
  wait(scene, between(scene, 0.3, 2));
  steps(scene, { ...about, headingBy: Math.PI + radians(between(scene, -1, 1)) });
  steps(scene, way);
  wait(scene, between(scene, 0.3, 1));
}

/** Bends to the ground, fiddles with the ball on its peg, comes up. */
function teeUp(scene: Scene): void {
  const takes = between(scene, 1.1, 1.6);
  const down = near(
    scene.random,
    {
      turnDeg: 8,
      lateralDeg: 6,
      flexionDeg: 80,
      planeDeg: 85,
      elevationDeg: 85,
      externalRotationDeg: 75,
    },
    4,
  );
  const floor = last(scene, 'hipY');
  pose(scene, down, scene.nowS, scene.nowS + takes);
  move(scene, 'hipY', floor - between(scene, 0.15, 0.35), scene.nowS, scene.nowS + takes);
  wait(scene, takes);
  scene.atAddress = false;
  waggle(scene, chance(scene, 0.5) ? 1 : 2);
  wait(scene, between(scene, 0.2, 1));
  move(scene, 'hipY', floor, scene.nowS, scene.nowS + 1.1);
  standUp(scene, between(scene, 0.5, 1.5));
}

/** To the top, a pause, and calmly back down without letting go. */
function abort(scene: Scene): void {
  getReady(scene);
  backswing(scene, near(scene.random, scene.golfer.top, 2.5), between(scene, 0.9, 1.3));
  wait(scene, between(scene, 0.5, 2.4));
  const takes = between(scene, 1.5, 2.4);
  pose(scene, near(scene.random, scene.golfer.address, 2), scene.nowS, scene.nowS + takes);
  wait(scene, takes + between(scene, 0.5, 1.2));
  scene.atAddress = true;
}

function idle(scene: Scene, seconds: number): void {
  if (scene.atAddress) standUp(scene, 0.3);
  const untilS = scene.nowS + seconds;
  while (untilS - scene.nowS > 3) {
    const takes = between(scene, 0.7, 1.4);
    pose(scene, near(scene.random, UPRIGHT, 4), scene.nowS, scene.nowS + takes);
    wait(scene, takes + between(scene, 0.4, 1.4));
  }
  scene.nowS = Math.max(scene.nowS, untilS);
}

/** Unstraps both sensors, tumbles them onto a table, where they lie dead still. */
function takeOff(scene: Scene): void {
  if (scene.atAddress) standUp(scene, 0.5);
  const fromS = scene.nowS;
  for (const [name, most] of [
    ['looseX', 2.4],
    ['looseY', 1.8],
  ] as const) {
    pass(scene, name, fromS, jet(0));
    pass(scene, name, fromS + 1.2, jet(between(scene, 0.8, most), between(scene, -1, 1)));
    pass(scene, name, fromS + 2.6, jet(between(scene, -most, most)));
  }
  move(scene, 'looseDrop', 0.35, fromS + 0.6, fromS + 2.6);
  move(scene, 'life', 0, fromS + 1, fromS + 2.6);
  for (const timeS of [2.55, 2.7]) footfall(scene, fromS + timeS);
  wait(scene, 2.8 + between(scene, 5, 9));
}

/**
 * Two taps of a finger on the chest sensor, with the lead hand, or with the trail one, whose arm then comes up and feels
 * some of it. Sizes, times and shares are choices, from memory, no source.
 */
function tapTwice(scene: Scene): void {
  const withTrailHand = chance(scene, 0.5);
  const arm = last(scene, 'elevation');
  if (withTrailHand) move(scene, 'elevation', arm + radians(25), scene.nowS, scene.nowS + 0.6);
  wait(scene, between(scene, 0.8, 1.2));
  for (const apartS of [between(scene, 0.18, 0.42), 0.4]) {
    const { thorax } = figureAt(scene.golfer.build, scene.score, scene.nowS);
    const size = between(scene, 10, 35);
    const push = rotate(thorax.q, scale(UNIT_X, -size));
    scene.score.shocks.push({
      timeS: scene.nowS,
      scaleS: between(scene, 0.006, 0.012),
      chest: push,
      arm: scale(push, withTrailHand ? between(scene, 0.05, 0.3) : between(scene, 0.01, 0.08)),
      armSwing: 0,
    });
    wait(scene, apartS);
  }
  if (withTrailHand) move(scene, 'elevation', arm, scene.nowS, scene.nowS + 0.6);
  wait(scene, between(scene, 0.8, 1.5));
}

/** Fidgets over the ball without swinging. */
function fidget(scene: Scene): void {
  if (!scene.atAddress) takeAddress(scene, 0.4);
  waggle(scene, chance(scene, 0.5) ? 3 : 4);
  wait(scene, between(scene, 0.4, 1.2));
}

export function distract(scene: Scene, kind: DistractorKind, seconds: number | null): void {
  const startS = scene.nowS;
  if (kind === 'walk') walk(scene);
  else if (kind === 'tee') teeUp(scene);
  else if (kind === 'abort') abort(scene);
  else if (kind === 'waggle') fidget(scene);
  else if (kind === 'taps') tapTwice(scene);
  else if (kind === 'takeoff') takeOff(scene);
  else idle(scene, seconds ?? between(scene, 4, 9));
  scene.distractors.push({ kind, startS, endS: scene.nowS });
}
