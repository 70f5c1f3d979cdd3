import { describe, expect, it } from 'vitest';
import { DEFAULT_PLAN, type Plan } from '../../src/coaching/plan.ts';
import { planChanges, planLines } from '../../src/coaching/planChanges.ts';
import { PLAN_FIELDS, changedFields, mergePlans } from '../../src/coaching/planFields.ts';

const base: Plan = { ...DEFAULT_PLAN, ownRange: { flexionDeg: 40 } };
/** Every field other than in `base`. */
const other: Plan = {
  schema: 1,
  name: 'Other',
  stage: 'movement',
  ratio: { rehearsals: 3, balls: 2 },
  targets: {
    holdS: { min: 2 },
    chestLeadMs: null,
    leanChangeDeg: { min: 0 },
    addedFlexionDeg: { min: 3, max: 9 },
    keptRotationDeg: { min: -10 },
    turnTowardTargetDeg: { min: 30 },
    releaseToCatchMs: { max: 400 },
  },
  ownRange: { externalRotationDeg: 70, lateralTrailDeg: 20, lateralLeadDeg: 21 },
  volume: { perSession: 30, perWeek: 90 },
  checklist: ['One'],
  note: 'Slowly.',
};

describe('a plan that two people changed', () => {
  it('names every field that differs, and who changed it', () => {
    expect(changedFields(base, base, other).map(({ field }) => field)).toEqual(PLAN_FIELDS);
    expect(planLines(other).map(({ field }) => field)).toEqual(PLAN_FIELDS);
    const theirs = { ...base, name: 'Theirs', note: 'Both' };
    const mine = { ...base, note: 'Both', volume: { ...base.volume, perWeek: 100 } };
    expect(changedFields(base, theirs, mine)).toEqual([
      { field: 'name', byThem: true, byMe: false },
      { field: 'perWeek', byThem: false, byMe: true },
    ]);
  });

  it('is merged field by field: nothing else comes along', () => {
    for (const field of PLAN_FIELDS) {
      const merged = mergePlans(base, other, [field]);
      expect(changedFields(base, base, merged).map((c) => c.field)).toEqual([field]);
      expect(changedFields(base, other, merged).map((c) => c.field)).not.toContain(field);
    }
    expect(mergePlans(base, other, PLAN_FIELDS)).toEqual(other);
    expect(mergePlans(other, base, PLAN_FIELDS)).toEqual(base);
    expect(planChanges(other, mergePlans(base, other, PLAN_FIELDS))).toEqual([]);
  });
});
