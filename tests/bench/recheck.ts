/**
 * How often the re-check of a kept calibration refuses a mounting that has not moved, and how often it sees one
 * that has: `npm run report:recheck`. Simulated students calibrate in full on one day; on another they stand, bow
 * once and raise the arm once. A posture and the direction of a movement vary from day to day by the spreads
 * below (choices from memory, no source); the mounting is turned about each axis of the segment.
 */
import * as analysis from '../../src/analysis/analysis.ts';
import { RECHECK_LIMITS } from '../../src/body/calibrationLimits.ts';
import type { StepWindow, WornSensor } from '../../src/body/calibrationSteps.ts';
import { type KnownFits, recheck } from '../../src/body/recheck.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { radians } from '../../src/math/angle.ts';
import { type Quat, conjugate, fromRotationVector, multiply, rotate } from '../../src/math/quat.ts';
import { gaussian, seededRandom } from '../../src/math/random.ts';
import { type Vec3, UNIT_X, UNIT_Y, UNIT_Z, scale } from '../../src/math/vec3.ts';
import { mountingOf } from '../../src/body/calibration.ts';
import { simulateSession } from '../../src/sensors/sources/synthetic/index.ts';

const SENSORS = ['chest', 'trailArm'] as const;
/** Spread of the posture at rest about each horizontal axis, and of the movement's direction, deg. */
const SPREAD = { chest: { stand: 2, move: 2 }, trailArm: { stand: 2.5, move: 4 } } as const;
const AXES = { 'forward axis': UNIT_X, 'long axis': UNIT_Y, 'sideways axis': UNIT_Z } as const;
const TURNS = [10, 15, 20];
const pairs = Number(process.argv[2] ?? 60);

function run(seed: number, repetitions: number) {
  const session = simulateSession({ seed, calibrationRepetitions: repetitions });
  const state = analysis.start({ hand: 'right', plan: DEFAULT_PLAN });
  const steps: { kept: StepWindow[]; fits: KnownFits | null } = { kept: [], fits: null };
  for (const event of session.events)
    analysis.step(state, { kind: 'event', event }, () => undefined);
  for (const { samples } of session.packets)
    for (const sample of samples)
      analysis.step(state, { kind: 'sample', sample }, (o) => {
        if (o.kind === 'calibration') steps.fits = o.fits;
      });
  analysis.finish(state, () => undefined);
  const { steps: done, accBias } = state.calibrating;
  return {
    fits: steps.fits,
    stand: done.stands[0]!,
    bow: done.bows[0]!,
    raise: done.armRaises[0]!,
    accBias,
  };
}

/** One sensor's readings as they would be with everything turned by `q`, sensor frame. */
const turned = (w: StepWindow, sensor: WornSensor, q: Quat): StepWindow => ({
  ...w,
  [sensor]: w[sensor].map((o) => ({ ...o, acc: rotate(q, o.acc), gyro: rotate(q, o.gyro) })),
  accBias: { ...w.accBias, [sensor]: rotate(q, w.accBias[sensor]) },
});

const about = (axis: Vec3, deg: number): Quat => fromRotationVector(scale(axis, radians(deg)));

/** The second day's readings in the first day's sensor frame, postures varied, the mounting turned. */
function secondDay(pair: number, moved: WornSensor | null, axis: Vec3, deg: number) {
  const first = days[pair]!.first;
  const second = days[pair]!.second;
  const random = seededRandom(1000 + pair);
  let { stand, bow, raise } = second;
  const bias = { ...second.accBias };
  for (const sensor of SENSORS) {
    const then = mountingOf(first.fits![sensor], first.accBias[sensor])!;
    const now = mountingOf(second.fits![sensor], second.accBias[sensor])!;
    const turn = sensor === moved ? about(axis, deg) : about(axis, 0);
    const through = (posture: Quat): Quat =>
      multiply(then, multiply(turn, multiply(posture, conjugate(now))));
    const { stand: sway, move } = SPREAD[sensor];
    const posture = multiply(
      about(UNIT_X, sway * gaussian(random)),
      about(UNIT_Z, sway * gaussian(random)),
    );
    const direction = about(UNIT_Y, move * gaussian(random));
    stand = turned(stand, sensor, through(posture));
    if (sensor === 'chest') bow = turned(bow, sensor, through(direction));
    else raise = turned(raise, sensor, through(direction));
    bias[sensor] = rotate(through(about(UNIT_X, 0)), second.accBias[sensor]);
  }
  return recheck(first.fits!, { stand, bow, armRaise: raise }, bias).quality;
}

const days = Array.from({ length: pairs }, (_, i) => {
  // the truth of the second day's mounting is near enough what a whole calibration of it says
  const whole = run(5000 + i, 3);
  const once = run(5000 + i, 1);
  return { first: run(i + 1, 3), second: { ...once, fits: whole.fits, accBias: whole.accBias } };
}).filter(({ first, second }) => first.fits !== null && second.fits !== null);

const percent = (n: number, of: number): string => `${((100 * n) / of).toFixed(0)} %`;
const unmoved = days.map((_, i) => secondDay(i, null, UNIT_Y, 0));

/** Each turn counted both ways. */
const seen = (moved: WornSensor, axis: Vec3, deg: number): string => {
  const tries = days.flatMap((_, i) => [deg, -deg].map((d) => secondDay(i, moved, axis, d)));
  const found = tries.filter((q) => q.problems.some((p) => p.code === 'mounting-moved'));
  return percent(found.length, tries.length).padStart(8);
};

console.log(`${days.length} pairs of days; limits ${JSON.stringify(RECHECK_LIMITS)}`);
console.log(
  `refused though nothing moved: ${percent(unmoved.filter((q) => !q.accepted).length, days.length)}`,
);
for (const { message } of unmoved.flatMap((q) => q.problems)) console.log(`  ${message}`);
console.log(`seen                       ${TURNS.map((d) => `${d} deg`.padStart(8)).join('')}`);
for (const sensor of SENSORS)
  for (const [name, axis] of Object.entries(AXES))
    console.log(
      `  ${sensor.padEnd(10)}${name.padEnd(15)}${TURNS.map((d) => seen(sensor, axis, d)).join('')}`,
    );
