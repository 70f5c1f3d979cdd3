import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEFAULT_PLAN, type Plan, TARGET_MEASURES } from '../../../src/coaching/plan.ts';
import { planChanges } from '../../../src/coaching/planChanges.ts';
import { draftOf, readDraft } from '../../../src/dashboard/plan/draft.ts';

const draft = draftOf(DEFAULT_PLAN);

describe('a plan as it is written', () => {
  it('is the same plan after being shown and read', () => {
    const band = fc.record({
      min: fc.integer({ min: 0, max: 5 }),
      max: fc.integer({ min: 5, max: 9 }),
    });
    const targets = fc.record(
      Object.fromEntries(TARGET_MEASURES.map((m) => [m, fc.option(band)])),
    ) as unknown as fc.Arbitrary<Plan['targets']>;
    fc.assert(
      fc.property(targets, fc.integer({ min: 1, max: 60 }), (asked, perSession) => {
        const plan: Plan = {
          ...DEFAULT_PLAN,
          targets: asked,
          ownRange: { flexionDeg: 60 },
          volume: { perSession, perWeek: 200 },
        };
        expect(readDraft(draftOf(plan))).toEqual({ plan, problems: [] });
      }),
    );
  });

  it('takes a comma and a minus sign as they are typed', () => {
    const { plan } = readDraft({
      ...draft,
      targets: {
        ...draft.targets,
        holdS: { min: '1,5', max: '' },
        leanChangeDeg: { min: '−4', max: ' ' },
      },
    });
    expect(plan?.targets.holdS).toEqual({ min: 1.5 });
    expect(plan?.targets.leanChangeDeg).toEqual({ min: -4 });
  });

  it('asks for nothing where both ends are empty', () => {
    const { plan } = readDraft({
      ...draft,
      targets: { ...draft.targets, holdS: { min: '', max: '' } },
    });
    expect(plan?.targets.holdS).toBeNull();
  });

  it('says beside the field what cannot be', () => {
    const { plan, problems } = readDraft({
      ...draft,
      rehearsals: 'two',
      targets: { ...draft.targets, holdS: { min: '3', max: '1' } },
    });
    expect(plan).toBeNull();
    expect(problems.map(({ path }) => path)).toEqual(['ratio.rehearsals', 'targets.holdS']);
  });
});

describe('what a new plan changes', () => {
  it('is nothing for the same plan', () => {
    expect(planChanges(DEFAULT_PLAN, DEFAULT_PLAN)).toEqual([]);
  });

  it('is said in words, each with what was before', () => {
    const after: Plan = {
      ...DEFAULT_PLAN,
      stage: 'movement',
      targets: { ...DEFAULT_PLAN.targets, holdS: { min: 1.2 }, addedFlexionDeg: null },
      volume: { perSession: 40, perWeek: 200 },
      checklist: [...DEFAULT_PLAN.checklist.slice(1), 'Breathe'],
      note: 'Slowly.',
    };
    expect(planChanges(DEFAULT_PLAN, after)).toEqual([
      'Stage: Movement only, was Full mix.',
      'Mix: rehearsals only, was 2 to 1.',
      'Hold at the top: at least 1.2 s, was at least 1 s.',
      'Bend added beyond the turn: no target, was at least 2°.',
      'Repetitions per session: at most 40, was at most 60.',
      'Checklist, added: Breathe',
      'Checklist, removed: Trail foot turned out about 20 degrees',
      'Note added.',
    ]);
  });
});
