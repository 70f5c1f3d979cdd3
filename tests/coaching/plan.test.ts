import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  askedRatio,
  DEFAULT_PLAN,
  TARGET_BASIS,
  TARGET_MEASURES,
} from '../../src/coaching/plan.ts';
import { validatePlan } from '../../src/coaching/validatePlan.ts';

const problemsOf = (value: unknown): string[] =>
  (validatePlan(value).problems ?? []).map((p) => p.message);
const pathsOf = (value: unknown): string[] =>
  (validatePlan(value).problems ?? []).map((p) => p.path);

describe('the default plan', () => {
  // Values: the project's design of the drill; coaching choices without published basis.
  it('asks for two rehearsals to a ball and the targets of the design', () => {
    expect(DEFAULT_PLAN.ratio).toEqual({ rehearsals: 2, balls: 1 });
    expect(DEFAULT_PLAN.targets).toEqual({
      holdS: { min: 1 },
      chestLeadMs: { min: 20 },
      leanChangeDeg: { min: -3 },
      addedFlexionDeg: { min: 2 },
      keptRotationDeg: { min: -15 },
      turnTowardTargetDeg: { min: 25 },
      releaseToCatchMs: { max: 450 },
    });
  });

  it('says that targets have no published norm', () => {
    expect(TARGET_BASIS).toBe('coaching choice, not a published norm');
  });

  it('says where the camera stands', () => {
    expect(DEFAULT_PLAN.checklist.join()).toMatch(/stance line, about breastbone height/);
  });

  it('asks for no ball in the stage of movement only', () => {
    expect(askedRatio({ ...DEFAULT_PLAN, stage: 'movement' })).toEqual({ rehearsals: 2, balls: 0 });
    expect(askedRatio({ ...DEFAULT_PLAN, stage: 'short-swings' }).balls).toBe(1);
  });
});

describe('reading a plan', () => {
  it('gives the default plan for an empty one', () => {
    expect(validatePlan({})).toEqual({ plan: DEFAULT_PLAN });
  });

  it('keeps what is given and takes defaults for the rest', () => {
    const { plan } = validatePlan({
      name: 'Week 2',
      ratio: { rehearsals: 3 },
      targets: { holdS: { min: 1.5 }, chestLeadMs: null },
    });
    expect(plan?.name).toBe('Week 2');
    expect(plan?.ratio).toEqual({ rehearsals: 3, balls: 1 });
    expect(plan?.targets.holdS).toEqual({ min: 1.5 });
    expect(plan?.targets.chestLeadMs).toBeNull();
    expect(plan?.targets.addedFlexionDeg).toEqual({ min: 2 });
  });

  it('does not share its answer with the default plan', () => {
    const { plan } = validatePlan({ targets: { holdS: null }, ownRange: { flexionDeg: 60 } });
    expect(plan?.ownRange).toEqual({ flexionDeg: 60 });
    expect(DEFAULT_PLAN.targets.holdS).toEqual({ min: 1 });
    expect(DEFAULT_PLAN.ownRange).toEqual({});
  });

  it.each([
    [null, 'plan must be an object, not null.'],
    [undefined, 'plan must be an object, not null.'],
    [[], 'plan must be an object, not a list.'],
    ['x', 'plan must be an object, not the text "x".'],
    [{ schema: 2 }, 'schema must be 1: this version reads no other.'],
    [
      { stage: 'fast' },
      'stage must be one of movement, short-swings, full-mix, not the text "fast".',
    ],
    [{ ratio: { rehearsals: 0 } }, 'ratio.rehearsals must be a number from 1 to 20, not 0.'],
    [{ ratio: { balls: 0 } }, 'ratio.balls must be a number from 1 to 20, not 0.'],
    [{ ratio: { balls: 1.5 } }, 'ratio.balls must be a whole number, not 1.5.'],
    [
      { targets: { holdS: { min: '1' } } },
      'targets.holdS.min must be a number from 0 to 10, not the text "1".',
    ],
    [{ targets: { holdS: 1 } }, 'targets.holdS must be an object, not 1.'],
    [{ targets: { holdS: {} } }, 'targets.holdS needs a min or a max. Use null for no target.'],
    [{ targets: { holdS: { min: 2, max: 1 } } }, 'targets.holdS has a min (2) above its max (1).'],
    [
      { targets: { holdS: { min: NaN } } },
      'targets.holdS.min must be a number from 0 to 10, not NaN.',
    ],
    [
      { ownRange: { flexionDeg: 400 } },
      'ownRange.flexionDeg must be a number from 0 to 150, not 400.',
    ],
    [{ volume: { perSession: 300 } }, 'volume.perWeek must not be below volume.perSession (300).'],
    [{ checklist: 'feet' }, 'checklist must be a list, not the text "feet".'],
    [{ checklist: [null] }, 'checklist[0] must be text, not null.'],
    [{ note: 'a\u001bb' }, 'note must not contain control characters.'],
    [{ name: 'x'.repeat(81) }, 'name must have at most 80 characters.'],
  ])('refuses %j in a sentence that names the path', (value, message) => {
    expect(problemsOf(value)).toEqual([message]);
  });

  it('names unknown keys and what is known there', () => {
    expect(problemsOf({ targets: { holdMs: { min: 1 } } })[0]).toMatch(
      /^targets\.holdMs is unknown. Known here: holdS, /,
    );
    expect(pathsOf({ goals: 1, volume: { perDay: 1 } })).toEqual(['goals', 'volume.perDay']);
    expect(pathsOf(JSON.parse('{"__proto__": {"name": "x"}}'))).toEqual(['__proto__']);
  });

  it('finds all problems at once', () => {
    expect(pathsOf({ name: 1, ratio: null, targets: { holdS: { min: -1 } }, note: false })).toEqual(
      ['name', 'ratio', 'targets.holdS.min', 'note'],
    );
  });

  it('never throws, and a plan that was read is read again as itself', () => {
    fc.assert(
      fc.property(fc.oneof(fc.jsonValue(), anyPlanLike()), (value) => {
        const { plan, problems } = validatePlan(value);
        expect(plan === undefined).toBe(problems !== undefined);
        if (plan) expect(validatePlan(JSON.parse(JSON.stringify(plan)))).toEqual({ plan });
      }),
    );
  });
});

function anyPlanLike() {
  const target = fc.option(
    fc.record(
      { min: fc.integer({ min: 0, max: 60 }), max: fc.integer({ min: 0, max: 60 }) },
      { requiredKeys: [] },
    ),
  );
  return fc.record(
    {
      name: fc.string(),
      stage: fc.constantFrom('movement', 'full-mix', 'other'),
      ratio: fc.record({ rehearsals: fc.integer({ min: 0, max: 5 }) }, { requiredKeys: [] }),
      targets: fc.dictionary(fc.constantFrom(...TARGET_MEASURES), target),
      ownRange: fc.record({ flexionDeg: fc.double() }, { requiredKeys: [] }),
      checklist: fc.array(fc.string()),
    },
    { requiredKeys: [] },
  );
}
