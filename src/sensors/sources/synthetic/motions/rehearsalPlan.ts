import { degrees, radians } from '../../../../math/angle.ts';
import { aboutY, multiply } from '../../../../math/quat.ts';
import { gaussian, uniform } from '../../../../math/random.ts';
import { type Golfer, near } from '../golfer.ts';
import { flexionParts, lateralOf, leanOf } from '../measures.ts';
import { type Pose, type TrunkPose, thoraxIn } from '../pose.ts';
import type { Scene } from '../scene.ts';
import type { RehearsalFault } from '../script.ts';

type Band = readonly [low: number, high: number];

/** What one rehearsal shall measure; bands leave room to the default plan's limits. */
interface Wanted {
  readonly holdS: Band;
  readonly chestLeadS: Band;
  readonly leanChangeDeg: Band;
  readonly addedFlexionDeg: Band;
  readonly keptRotationDeg: Band;
  readonly turnDeg: Band;
  /** Lateral bend at the catch, beyond that of a turn at constant lean, deg. */
  readonly lateralDeg: Band;
  /** Flexion at the top where it must differ from the golfer's own. */
  readonly topFlexionDeg?: Band;
}

/** Limits of the default plan: 1 s, 20 ms, -3, 2, -15, 25 deg, 450 ms. */
const wantedOf = (golfer: Golfer): Wanted => ({
  holdS: [1.15, 2.1],
  chestLeadS: [0.045, 0.11],
  leanChangeDeg: [-1.5, 9],
  addedFlexionDeg: [Math.max(3.4, golfer.addedFlexionDeg - 2.5), golfer.addedFlexionDeg + 2.5],
  keptRotationDeg: [golfer.keptRotationDeg - 3, golfer.keptRotationDeg + 4],
  turnDeg: [32, 54],
  lateralDeg: [-3, 9],
});

const FAULTY: Record<RehearsalFault, Partial<Wanted>> = {
  'short-hold': { holdS: [0.45, 0.8] },
  'arms-first': { chestLeadS: [-0.1, -0.045] },
  // Lean is lost without losing added flexion only from a top with little flexion and a short turn.
  'losing-lean': {
    leanChangeDeg: [-12, -4.8],
    addedFlexionDeg: [3, 3.8],
    turnDeg: [28, 33],
    lateralDeg: [18, 30],
    topFlexionDeg: [-4.5, -0.5],
  },
  'losing-rotation': { keptRotationDeg: [-36, -21] },
  'missed-catch': {},
};

export interface RehearsalPlan {
  readonly top: Pose;
  readonly atCatch: TrunkPose;
  readonly holdS: number;
  readonly chestLeadS: number;
  readonly keptRotationDeg: number;
}

/** The trunk's flexion that adds `addedDeg` on the way from `top`; the other two angles are given. */
export function bendTo(
  top: TrunkPose,
  turnDeg: number,
  lateralDeg: number,
  addedDeg: number,
): TrunkPose {
  const from = thoraxIn(top);
  const missing = (flexionDeg: number): number =>
    degrees(flexionParts(from, thoraxIn({ turnDeg, lateralDeg, flexionDeg })).added) - addedDeg;
  let [a, b] = [20, 35];
  let [fa, fb] = [missing(a), missing(b)];
  for (let i = 0; i < 40 && Math.abs(fb) > 1e-10 && fb !== fa; i++) {
    const next = b - (fb * (b - a)) / (fb - fa);
    [a, fa] = [b, fb];
    [b, fb] = [next, missing(next)];
  }
  return { turnDeg, lateralDeg, flexionDeg: b };
}

const inside = (value: number, [low, high]: Band): boolean => value >= low && value <= high;

/** A normal spread over the band: its ends are two deviations away. */
function spread(scene: Scene, [low, high]: Band): number {
  const g = Math.max(-2, Math.min(2, gaussian(scene.random)));
  return (low + high) / 2 + (g * (high - low)) / 4;
}

function tryPlan(scene: Scene, wanted: Wanted): RehearsalPlan | null {
  const { golfer, random } = scene;
  const usual = near(random, golfer.top, 1.5);
  const flexionDeg = wanted.topFlexionDeg
    ? uniform(random, ...wanted.topFlexionDeg)
    : usual.flexionDeg;
  const top = { ...usual, flexionDeg };
  const from = thoraxIn(top);
  const turn = spread(scene, wanted.turnDeg);
  const level = degrees(lateralOf(multiply(from, aboutY(radians(turn)))));
  const atCatch = bendTo(
    top,
    top.turnDeg + turn,
    level + uniform(random, ...wanted.lateralDeg),
    spread(scene, wanted.addedFlexionDeg),
  );
  const leanChange = degrees(leanOf(thoraxIn(atCatch)) - leanOf(from));
  if (!inside(leanChange, wanted.leanChangeDeg)) return null;
  return {
    top,
    atCatch,
    holdS: uniform(random, ...wanted.holdS),
    chestLeadS: uniform(random, ...wanted.chestLeadS),
    keptRotationDeg: spread(scene, wanted.keptRotationDeg),
  };
}

/** Draws a rehearsal that meets its bands in the angles' exact definitions. */
export function planRehearsal(scene: Scene, fault: RehearsalFault | null): RehearsalPlan {
  const wanted: Wanted = { ...wantedOf(scene.golfer), ...(fault ? FAULTY[fault] : {}) };
  for (let i = 0; i < 2000; i++) {
    const plan = tryPlan(scene, wanted);
    if (plan) return plan;
  }
  throw new Error(`no posture found for a rehearsal (${fault ?? 'good'})`);
}
