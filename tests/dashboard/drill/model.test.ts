import { describe, expect, it } from 'vitest';
import { flexionGain, thoraxAngles } from '../../../src/body/angles.ts';
import { DEFAULT_PLAN } from '../../../src/coaching/plan.ts';
import { drillMoment, momentOf } from '../../../src/dashboard/drill/inStep.ts';
import { DRILL, STEPS, STEP_AT, drillPose, stepAt } from '../../../src/dashboard/drill/model.ts';
import { degrees } from '../../../src/math/angle.ts';
import { relative } from '../../../src/math/quat.ts';

const { releaseS, catchS, topS } = DRILL;
const from = drillPose(releaseS);
const to = drillPose(catchS);
const { targets } = DEFAULT_PLAN;

/** Minus the twist of the upper arm in the chest about its own axis, added up in small steps, deg. */
function keptRotation(): number {
  const seen = (s: number) => relative(drillPose(s).thorax, drillPose(s).humerus);
  const steps = 2000;
  let sum = 0;
  for (let i = 0; i < steps; i++) {
    const s = releaseS + ((catchS - releaseS) * i) / steps;
    const { w, y } = relative(seen(s), seen(s + (catchS - releaseS) / steps));
    sum -= 2 * Math.atan2(y, w);
  }
  return degrees(sum);
}

describe('the drawn drill meets every target of the standard plan', () => {
  const gain = flexionGain(from.thorax, to.thorax);
  it.each([
    ['hold', releaseS - topS, targets.holdS?.min],
    ['bend added', degrees(gain.added), targets.addedFlexionDeg?.min],
    ['lean', degrees(gain.leanChange), targets.leanChangeDeg?.min],
    [
      'turn toward the target',
      degrees(thoraxAngles(to.thorax).turn - thoraxAngles(from.thorax).turn),
      targets.turnTowardTargetDeg?.min,
    ],
    ['rotation kept', keptRotation(), targets.keptRotationDeg?.min],
  ])('%s', (_, value, least) => {
    expect(value).toBeGreaterThanOrEqual(least!);
  });

  it('catch soon enough', () => {
    expect((catchS - releaseS) * 1000).toBeLessThanOrEqual(targets.releaseToCatchMs!.max!);
  });

  it('chest first: the arm waits for longer than the least lead', () => {
    const lead = targets.chestLeadMs!.min! / 1000;
    const s = releaseS + lead;
    const inChest = (t: number) => relative(drillPose(t).thorax, drillPose(t).humerus);
    expect(inChest(s).w).toBeCloseTo(inChest(releaseS).w, 12);
    expect(drillPose(s).thorax.w).not.toBeCloseTo(from.thorax.w, 7);
  });

  it('is still while it holds', () => {
    expect(drillPose(topS)).toEqual(drillPose(releaseS));
  });
});

it('each step is shown at a moment of its own', () => {
  expect(STEPS.map((step) => stepAt(STEP_AT[step]))).toEqual([...STEPS]);
});

describe('a repetition in step with the drill', () => {
  const its = { startS: 100, topS: 100.8, releaseS: 103, catchS: 103.35 };
  it('has top, release and catch at the same moments', () => {
    expect(momentOf(its, DRILL.topS)).toBeCloseTo(its.topS, 9);
    expect(momentOf(its, DRILL.releaseS)).toBeCloseTo(its.releaseS, 9);
    expect(momentOf(its, DRILL.catchS)).toBeCloseTo(its.catchS, 9);
  });

  it('only ever goes forward, and back again to where it came from', () => {
    for (let s = 0; s < DRILL.endS; s += 0.01) {
      const there = momentOf(its, s);
      expect(momentOf(its, s + 0.01)).toBeGreaterThan(there);
      expect(drillMoment(its, there)).toBeCloseTo(s, 9);
    }
  });

  it('without a catch goes on as long as the drill does', () => {
    const missed = { ...its, catchS: null };
    expect(momentOf(missed, DRILL.catchS) - its.releaseS).toBeCloseTo(
      DRILL.catchS - DRILL.releaseS,
    );
  });
});
