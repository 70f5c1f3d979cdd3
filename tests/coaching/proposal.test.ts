import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  DEFAULT_PLAN,
  type Plan,
  STAGES,
  type Stage,
  TARGET_MEASURES,
} from '../../src/coaching/plan.ts';
import {
  IN_A_ROW,
  type SessionRecord,
  concernStands,
  isMet,
  proposal,
} from '../../src/coaching/proposal.ts';

const HOLD_ONLY: Plan = {
  ...DEFAULT_PLAN,
  stage: 'movement',
  targets: {
    ...(Object.fromEntries(TARGET_MEASURES.map((m) => [m, null])) as unknown as Plan['targets']),
    holdS: { min: 1 },
  },
};
const BOTH: Plan = {
  ...HOLD_ONLY,
  targets: { ...HOLD_ONLY.targets, turnTowardTargetDeg: { min: 25 }, leanChangeDeg: { min: -3 } },
};
const hold = (low: number, count = 10) => ({
  holdS: { count, low, median: low + 0.2, high: low + 0.4 },
});
const session = (day: number, own: Partial<SessionRecord> = {}): SessionRecord => ({
  startedMs: day,
  plan: HOLD_ONLY,
  rehearsals: hold(1.1),
  warnings: 0,
  painBefore: 0,
  painAfter: 1,
  ...own,
});
/** Newest first. */
const three = (own: Partial<SessionRecord> = {}): SessionRecord[] => [
  session(3, own),
  session(2),
  session(1),
];

describe('a target', () => {
  it('is met where three of four rehearsals reached it, of at least five', () => {
    const spread = { count: 5, low: 1, median: 1.2, high: 1.6 };
    expect(isMet(spread, { min: 1 })).toBe(true);
    expect(isMet(spread, { min: 1.01 })).toBe(false);
    expect(isMet(spread, { min: 1, max: 1.5 })).toBe(false);
    expect(isMet({ ...spread, count: 4 }, { min: 1 })).toBe(false);
    expect(isMet(undefined, { min: 1 })).toBe(false);
  });
});

describe('the next step', () => {
  it('is the next stage of the plan once every target was met in three sessions in a row', () => {
    expect(proposal(HOLD_ONLY, three())).toMatchObject({ kind: 'stage', stage: 'short-swings' });
    expect(proposal(HOLD_ONLY, three().slice(1))).toBeNull();
    expect(proposal(HOLD_ONLY, three({ rehearsals: hold(0.9) }))).toBeNull();
  });

  it('goes no further than the last stage', () => {
    const last: Plan = { ...HOLD_ONLY, stage: 'full-mix' };
    const all = three().map((s) => ({ ...s, plan: last }));
    expect(proposal(last, all)).toEqual({ kind: 'done', met: ['holdS'], asked: 1 });
  });

  it('begins to count anew in a new stage', () => {
    expect(proposal({ ...HOLD_ONLY, stage: 'short-swings' }, three())).toBeNull();
  });

  it('is the next target while others are open: the one worked on, else the first', () => {
    expect(proposal(BOTH, three())).toMatchObject({
      kind: 'target',
      met: ['holdS'],
      asked: 3,
      next: 'leanChangeDeg',
    });
    expect(proposal(BOTH, three(), 'turn-through')).toMatchObject({
      next: 'turnTowardTargetDeg',
      target: { min: 25 },
    });
  });

  it('waits while a warning or pain stands', () => {
    expect(proposal(HOLD_ONLY, three({ warnings: 1 }))).toBeNull();
    expect(proposal(HOLD_ONLY, three({ painAfter: 4 }))).toBeNull();
    const hurt = session(0, { painAfter: 5 });
    const notAsked = three().map((s) => ({ ...s, painBefore: null, painAfter: null }));
    expect(proposal(HOLD_ONLY, [...notAsked, hurt])).toBeNull();
    expect(proposal(HOLD_ONLY, [...three(), hurt])).not.toBeNull();
  });

  const anyRecord = fc
    .record({
      low: fc.integer({ min: 97, max: 140 }),
      count: fc.constantFrom(4, 5, 12, 20),
      warnings: fc.constantFrom(0, 0, 0, 1),
      painBefore: fc.option(fc.integer({ min: 0, max: 3 })),
      painAfter: fc.constantFrom(null, 0, 1, 2, 5),
      stage: fc.constantFrom<Stage>('movement', 'movement', 'movement', 'full-mix'),
    })
    .map(({ low, count, stage, ...s }) => ({
      ...s,
      startedMs: 0,
      plan: { stage },
      rehearsals: hold(low / 100, count),
    }));

  it('never comes while a concern stands, never skips a stage, never without three sessions that met it', () => {
    fc.assert(
      fc.property(
        fc.array(anyRecord, { minLength: 2, maxLength: 5 }),
        fc.constantFrom<Stage>('movement', 'movement', 'short-swings', 'full-mix'),
        (records, stage) => {
          const newestFirst = records.map((s, i) => ({ ...s, startedMs: records.length - i }));
          const found = proposal({ ...HOLD_ONLY, stage }, newestFirst);
          const newest = newestFirst.slice(0, IN_A_ROW);
          const met =
            newest.length === IN_A_ROW &&
            newest.every((s) => s.plan.stage === stage && isMet(s.rehearsals.holdS, { min: 1 }));
          expect(found !== null).toBe(met && !concernStands(newestFirst));
          const order = Object.keys(STAGES);
          if (found?.kind === 'stage')
            expect(order.indexOf(found.stage)).toBe(order.indexOf(stage) + 1);
          if (found?.kind === 'done') expect(stage).toBe('full-mix');
        },
      ),
      { numRuns: 1000 },
    );
  });
});
