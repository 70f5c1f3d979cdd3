import { describe, expect, it } from 'vitest';
import type { JointAngles } from '../../src/body/segments.ts';
import type { SafetyWarning } from '../../src/coaching/judgement.ts';
import {
  addWarning,
  type Stage,
  startRangeWatch,
  watchOwnRange,
} from '../../src/coaching/rangeWatch.ts';

const angles = (flexionDeg: number): JointAngles =>
  ({ flexionDeg, lateralDeg: 0, elevationDeg: 30, externalRotationDeg: null }) as JointAngles;
const OWN = { ownRange: { flexionDeg: 40 } };

/** Movements as stage and forward bend, one instant a second; the warnings as a session keeps them. */
function session(...instants: readonly (readonly [Stage, number])[]): readonly SafetyWarning[] {
  const watch = startRangeWatch();
  const all: SafetyWarning[] = [];
  for (const [s, [stage, bend]] of instants.entries())
    for (const w of watchOwnRange(watch, stage, angles(bend), s, OWN)) addWarning(all, w);
  return all;
}
const swing = (bend: number) =>
  [
    ['before', 0],
    ['moving', bend],
    ['moving', 0],
  ] as const;
const rehearsal = (bend: number) =>
  [
    ['before', 0],
    ['hold', 0],
    ['moving', bend],
    ['moving', 0],
  ] as const;

describe('the own range in movements of the drill and in full swings', () => {
  it('is not warned of in full swings that go a little beyond it', () => {
    expect(session(...swing(50), ...swing(60), ...swing(69))).toEqual([]);
  });

  it('is warned of in a rehearsal, once with a count', () => {
    const found = session(...rehearsal(50), ...swing(50), ...rehearsal(50), ...rehearsal(50));
    expect(found).toMatchObject([{ id: 'trunk-own-range', atS: 2, times: 3, lastS: 13 }]);
    expect(found[0]!.swingsOnly).toBeUndefined();
  });

  it('is warned of in a hold that was reached beyond it', () => {
    expect(session(['before', 0], ['moving', 50], ['hold', 50])).toMatchObject([{ atS: 1 }]);
  });

  it('far beyond is warned of in a full swing, and says that no rehearsal was concerned', () => {
    expect(session(...swing(71), ...swing(71))).toMatchObject([{ times: 2, swingsOnly: true }]);
    expect(session(...swing(71), ...rehearsal(50))[0]!.swingsOnly).toBeUndefined();
  });
});
