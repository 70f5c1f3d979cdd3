import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  asksForMore,
  chestLeadCue,
  FAULT_CUES,
  goodCue,
  MISSED_CATCH,
  notScored,
  STAY_EASY,
} from '../../src/coaching/cues.ts';
import { judgeRehearsal } from '../../src/coaching/judge.ts';
import type { Cue } from '../../src/coaching/judgement.ts';
import { DEFAULT_PLAN, type Plan, TARGET_MEASURES } from '../../src/coaching/plan.ts';
import { rehearsal } from './repetitions.ts';

const judge = (
  changes: Parameters<typeof rehearsal>[0],
  warningStands = false,
  plan: Plan = DEFAULT_PLAN,
) => judgeRehearsal(rehearsal(changes), plan, warningStands);

/** One fault each, in the order in which the design names them. */
const FAULTS = [
  ['a short hold', { holdS: 0.6 }, 'hold-longer'],
  ['the arms starting first', { measures: { chestLeadMs: -60 } }, 'chest-first'],
  ['straightening up', { measures: { leanChangeDeg: -8 } }, 'keep-lean'],
  ['no added flexion', { measures: { addedFlexionDeg: 0.5 } }, 'bend-down'],
  ['the arm rolling in', { measures: { keptRotationDeg: -30 } }, 'keep-arm-out'],
  ['too little turn', { measures: { turnTowardTargetDeg: 10 } }, 'turn-through'],
  ['a late catch', { measures: { releaseToCatchMs: 480 } }, 'catch-sooner'],
] as const;

describe('judging a rehearsal', () => {
  it('passes one that meets every target, with a short positive cue', () => {
    const verdict = judge({});
    expect(verdict.passed).toBe(true);
    expect(verdict.cue.code).toBe('good');
    expect(verdict.checks.map((c) => c.measure)).toEqual([...TARGET_MEASURES]);
    expect(verdict.checks.every((c) => c.passed)).toBe(true);
  });

  it.each(FAULTS)('fails %s alone with its own cue', (_, changes, code) => {
    const verdict = judge(changes);
    expect(verdict.passed).toBe(false);
    expect(verdict.cue.code).toBe(code);
    expect(verdict.checks.filter((c) => c.passed === false)).toHaveLength(1);
  });

  // Order: hold, chest lead, lean/flexion, kept rotation, turn, catch (the design's order of faults).
  it.each(FAULTS.map((f, i) => [f[0], i] as const))('names %s before all later faults', (_, i) => {
    const later = FAULTS.slice(i);
    const measures = Object.assign(
      {},
      ...later.map(([, c]) => ('measures' in c ? c.measures : {})),
    );
    const holdS = i === 0 ? 0.6 : 1.3;
    expect(judge({ holdS, measures }).cue.code).toBe(FAULTS[i]?.[2]);
  });

  it('counts a value on the edge of the band as reached', () => {
    expect(judge({ holdS: 1, measures: { releaseToCatchMs: 450, chestLeadMs: 20 } }).passed).toBe(
      true,
    );
  });

  it.each(['gap', 'saturated'] as const)(
    'does not score a repetition with %s, and says why',
    (flag) => {
      const verdict = judge({ flags: [flag], holdS: 0.2 });
      expect(verdict.passed).toBeNull();
      expect(verdict.cue.code).toBe('not-scored');
      expect(verdict.cue.text).toMatch(/^Not scored: \w/);
    },
  );

  it.each(['landed', 'catch-not-detected'] as const)(
    'says that the catch was missed when flagged %s',
    (flag) => {
      const verdict = judge({
        flags: [flag, 'catch-assumed'],
        catchS: null,
        measures: { releaseToCatchMs: null },
      });
      expect(verdict.passed).toBe(false);
      expect(verdict.cue.code).toBe('missed-catch');
      expect(verdict.checks.at(-1)).toMatchObject({
        measure: 'releaseToCatchMs',
        value: null,
        passed: false,
      });
    },
  );

  it('leaves a missing measure open, and the repetition unscored if nothing else failed', () => {
    const verdict = judge({ measures: { chestLeadMs: null } });
    expect(verdict.checks[1]).toMatchObject({ measure: 'chestLeadMs', value: null, passed: null });
    expect(verdict.passed).toBeNull();
    expect(verdict.cue.text).toBe('Not scored: arm start not detected.');
  });

  it('still fails one with a missing measure if another one failed', () => {
    const verdict = judge({ measures: { chestLeadMs: null, leanChangeDeg: -9 } });
    expect(verdict.passed).toBe(false);
    expect(verdict.cue.code).toBe('keep-lean');
  });

  it('takes a number that is not finite as missing', () => {
    expect(judge({ measures: { addedFlexionDeg: NaN } }).checks[3]?.value).toBeNull();
  });

  it('judges only what the plan asks for', () => {
    const plan: Plan = {
      ...DEFAULT_PLAN,
      targets: { ...DEFAULT_PLAN.targets, holdS: null, releaseToCatchMs: null },
    };
    const verdict = judge({ holdS: 0.1, flags: ['catch-not-detected'] }, false, plan);
    expect(verdict.passed).toBe(true);
    expect(verdict.checks).toHaveLength(5);
  });

  it('asks for less where the coach set an upper end', () => {
    const plan: Plan = {
      ...DEFAULT_PLAN,
      targets: { ...DEFAULT_PLAN.targets, turnTowardTargetDeg: { max: 50 } },
    };
    expect(judge({}, false, plan).cue.code).toBe('turn-less');
  });

  // Under 20 ms the design says "together" instead of a number.
  it.each([
    [19, /^Together\./],
    [0, /^Together\./],
    [-19, /^Together\./],
    [-20, /^Let your chest/],
  ])('says in words how chest and arms started at a lead of %d ms', (chestLeadMs, words) => {
    expect(judge({ measures: { chestLeadMs } }).cue.text).toMatch(words);
  });

  it('varies the positive cue by index alone', () => {
    const texts = [1, 2, 3, 4].map((index) => judge({ index }).cue.text);
    expect(new Set(texts).size).toBe(4);
    expect(judge({ index: 5 }).cue.text).toBe(texts[0]);
  });
});

describe('while a warning stands', () => {
  it('never asks for faster or farther, whatever failed', () => {
    const faults = fc.record({
      holdS: fc.constantFrom(0.5, 1.3),
      lead: fc.constantFrom(-40, 5, 90),
      lean: fc.constantFrom(-9, 1),
      added: fc.constantFrom(0, 10),
      kept: fc.constantFrom(-30, -5),
      turn: fc.constantFrom(10, 60),
      fall: fc.constantFrom(300, 500),
    });
    fc.assert(
      fc.property(faults, (f) => {
        const measures = {
          chestLeadMs: f.lead,
          leanChangeDeg: f.lean,
          addedFlexionDeg: f.added,
          keptRotationDeg: f.kept,
          turnTowardTargetDeg: f.turn,
          releaseToCatchMs: f.fall,
        };
        const calm = judge({ holdS: f.holdS, measures }, true);
        expect(asksForMore(calm.cue)).toBe(false);
        expect(calm.passed).toBe(judge({ holdS: f.holdS, measures }).passed);
      }),
    );
  });

  it('names the first failed that may be said, else stays easy', () => {
    expect(judge({ measures: { leanChangeDeg: -9 }, flags: ['landed'] }, true).cue.code).toBe(
      'missed-catch',
    );
    expect(judge({ measures: { turnTowardTargetDeg: 5 } }, true).cue).toEqual(STAY_EASY);
  });
});

const ALL_CUES: Cue[] = [
  ...Object.values(FAULT_CUES).flatMap((c) => [c.below, c.above]),
  ...[30, 0, -30].map(chestLeadCue),
  ...[0, 1, 2, 3].map(goodCue),
  ...(['gap', 'range', 'chestLeadMs'] as const).map(notScored),
  MISSED_CATCH,
  STAY_EASY,
];

describe('the wording of cues', () => {
  it.each(ALL_CUES.map((c) => [c.text, c] as const))(
    '"%s" is a sentence of at most six plain words',
    (text) => {
      expect(text.trim().split(/\s+/).length).toBeLessThanOrEqual(6);
      expect(text).toMatch(/^[A-Z].*\.$/);
      // Terms belong beside the plain words on the screen, never in a spoken cue; blame and haste in neither.
      expect(text).not.toMatch(
        /flexion|rotation|external|humerus|thorax|axial|axis|deg|drop shot|tip|zone|score\b|metric/i,
      );
      expect(text).not.toMatch(/bad|wrong|fail|never|don't|must|hurry|fast|hard|!/i);
    },
  );

  it('gives a different code to each thing to change', () => {
    const below = Object.values(FAULT_CUES).map((c) => c.below.code);
    expect(new Set(below).size).toBe(below.length);
  });
});
