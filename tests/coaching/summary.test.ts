import { describe, expect, it } from 'vitest';
import { judgeRehearsal } from '../../src/coaching/judge.ts';
import type { JudgedRehearsal, JudgedRepetition } from '../../src/coaching/judgement.ts';
import { addToLedger, emptyLedger, ledgerOf } from '../../src/coaching/ledger.ts';
import { DEFAULT_PLAN, type Plan } from '../../src/coaching/plan.ts';
import { summarise } from '../../src/coaching/summary.ts';
import { warningOf } from '../../src/coaching/warnings.ts';
import { ball, rehearsal } from './repetitions.ts';

type Changes = Parameters<typeof rehearsal>[0];
type Step = Changes | 'ball';

const ARMS_FIRST: Changes = { measures: { chestLeadMs: -60 } };
const LOST_LEAN: Changes = { measures: { leanChangeDeg: -9 } };
const UNSCORED: Changes = { flags: ['gap'] };

function judged(changes: Changes, index: number, plan: Plan): JudgedRehearsal {
  const r = rehearsal({ ...changes, index });
  return { ...r, verdict: judgeRehearsal(r, plan) };
}

function practice(steps: Step[], { plan = DEFAULT_PLAN, addedByBalls = 10 } = {}) {
  const repetitions: JudgedRepetition[] = steps.map((s, i) =>
    s === 'ball' ? ball({ addedFlexionDeg: addedByBalls }, i + 1) : judged(s, i + 1, plan),
  );
  const book = repetitions.reduce(addToLedger, emptyLedger(plan));
  return { repetitions, ledger: ledgerOf(book), plan };
}

const summaryOf = (...args: Parameters<typeof practice>) => {
  const { repetitions, ledger, plan } = practice(...args);
  return summarise(repetitions, ledger, plan);
};
const times = (n: number, ...steps: Step[]): Step[] =>
  Array.from({ length: n }, () => steps).flat();

describe('the summary of a practice', () => {
  it('is honest about an empty practice', () => {
    const s = summaryOf([]);
    expect(s).toMatchObject({
      rehearsals: 0,
      scored: 0,
      passed: 0,
      mostFrequentCue: null,
      best: null,
      typical: null,
    });
    expect(s.mix.kept).toBeNull();
    expect(s.byMeasure.every((m) => m.median === null)).toBe(true);
    expect(s.next.text).toBe(
      'Not enough data for advice: 0 of at least 5 rehearsals could be scored.',
    );
  });

  it('counts passed, failed and not scored', () => {
    const s = summaryOf([{}, ARMS_FIRST, UNSCORED, 'ball']);
    expect(s).toMatchObject({ rehearsals: 3, scored: 2, passed: 1 });
  });

  it('counts each measure over the scored rehearsals and gives its median', () => {
    const s = summaryOf([{ holdS: 0.5 }, { holdS: 1.5 }, { holdS: 2 }, UNSCORED]);
    expect(s.byMeasure[0]).toEqual({
      measure: 'holdS',
      passed: 2,
      failed: 1,
      notTaken: 0,
      median: 1.5,
    });
  });

  it('leaves out measures that the plan does not ask for', () => {
    const plan = { ...DEFAULT_PLAN, targets: { ...DEFAULT_PLAN.targets, chestLeadMs: null } };
    expect(summaryOf([{}], { plan }).byMeasure.map((m) => m.measure)).not.toContain('chestLeadMs');
  });

  it('names the most frequent thing to change', () => {
    const s = summaryOf([LOST_LEAN, ARMS_FIRST, ARMS_FIRST, {}]);
    expect(s.mostFrequentCue).toMatchObject({ cue: { code: 'chest-first' }, count: 2 });
  });

  it('says how much of the mix was kept', () => {
    expect(summaryOf([...times(2, {}, {}, 'ball'), {}, 'ball', 'ball']).mix.kept).toBe(0.5);
  });
});

describe('the best and the typical rehearsal', () => {
  it('best: meets most targets', () => {
    expect(summaryOf([ARMS_FIRST, {}, LOST_LEAN]).best).toBe(2);
  });

  it('best: where even, lies deepest inside at its closest measure; then the earlier', () => {
    const close = { measures: { leanChangeDeg: -2.9 } };
    expect(summaryOf([close, {}, {}]).best).toBe(2);
  });

  it('typical: lies closest to the medians', () => {
    const at = (turn: number): Changes => ({ measures: { turnTowardTargetDeg: turn } });
    expect(summaryOf([at(40), at(90), at(62), at(60), at(20)]).typical).toBe(
      1 + [40, 90, 62, 60, 20].indexOf(60),
    );
  });
});

describe('what to do next time', () => {
  const next = (...args: Parameters<typeof practice>) => summaryOf(...args).next;
  const mixed = times(3, {}, {}, 'ball');

  it('names one thing where a fault is frequent', () => {
    expect(next([...times(3, ARMS_FIRST, {}, 'ball')])).toEqual({
      code: 'one-thing',
      text: 'One thing next time: Let your chest start first. (3 of 6 rehearsals)',
    });
  });

  it('asks for balls where none were hit, and for the mix where it was not kept', () => {
    expect(next(times(6, {})).text).toBe('Hit balls in between: 2 rehearsals, then a ball.');
    expect(next([...times(6, {}), 'ball', 'ball']).code).toBe('keep-mix');
  });

  it('asks for no balls in the stage of movement only', () => {
    expect(next(times(6, {}), { plan: { ...DEFAULT_PLAN, stage: 'movement' } }).code).toBe('go-on');
  });

  it('asks for shorter swings where the balls show less than half', () => {
    expect(next(mixed, { addedByBalls: 2 }).code).toBe('shorter-swings');
    expect(next(mixed).code).toBe('go-on');
  });

  it('claims no fault where none stands out', () => {
    const one = { holdS: 0.5 };
    const faults: Step[] = [one, ARMS_FIRST, 'ball', LOST_LEAN, {}, 'ball', {}, {}, 'ball'];
    expect(next(faults).code).toBe('same-again');
  });

  it.each([
    ['pain-now', 'pain'],
    ['pain-high', 'pain'],
    ['volume', 'less'],
    ['own-range', 'smaller'],
    ['trunk-own-range', 'smaller'],
    ['missed', 'lower-drop'],
  ] as const)('after the warning %s that comes first', (id, code) => {
    const { repetitions, ledger, plan } = practice(times(6, LOST_LEAN));
    expect(summarise(repetitions, ledger, plan, [warningOf(id, 30)]).next.code).toBe(code);
  });

  it('asks for nothing faster or farther after any warning', () => {
    const { repetitions, ledger, plan } = practice([...times(3, LOST_LEAN, {}, 'ball')]);
    expect(summarise(repetitions, ledger, plan, [warningOf('warm-up', 0)]).next.code).not.toBe(
      'one-thing',
    );
  });
});
