import { describe, expect, it } from 'vitest';
import { DEFAULT_PLAN } from '../../../src/coaching/plan.ts';
import { examplesOf } from '../../../src/dashboard/review/head/examples.ts';
import { headlinesOf } from '../../../src/dashboard/review/head/headline.ts';
import { planKept } from '../../../src/dashboard/review/head/planKept.ts';
import { differencesOf } from '../../../src/dashboard/review/repetition/differences.ts';
import type { SessionSummary } from '../../../src/streaming/sessionsContract.ts';
import { ball, rehearsal } from '../../practice/scripted.ts';

const added = (addedFlexionDeg: number) => ({ measures: { addedFlexionDeg } });
const lineOf = (repetitions: Parameters<typeof headlinesOf>[0], corrected = new Map()) =>
  headlinesOf(repetitions, DEFAULT_PLAN, corrected).find((h) => h.measure === 'addedFlexionDeg')!;

describe('the measures of a session', () => {
  const session = [
    rehearsal(1, added(1)),
    rehearsal(2, added(5)),
    ball(3),
    rehearsal(4, added(9)),
    rehearsal(5, { ...added(90), flags: ['gap'] }),
  ];

  it('are medians of rehearsals and balls apart, without what is not scored', () => {
    const line = lineOf(session);
    expect(line.rehearsals).toEqual({ count: 3, low: 3, median: 5, high: 7 });
    expect(line.balls).toMatchObject({ count: 1, median: 2.9 });
    expect([line.reached, line.judged]).toEqual([2, 3]);
    expect(line.target).toEqual({ min: 2 });
  });

  it('leave out a repetition whose kind was set by hand', () => {
    expect(lineOf(session, new Map([[4, 'ball']])).rehearsals?.count).toBe(2);
    expect(lineOf(session, new Map([[3, 'ignored']])).balls).toBeNull();
  });

  it('have no hold for balls, and nothing for an empty session', () => {
    const lines = headlinesOf([ball(1)], DEFAULT_PLAN);
    expect(lines.find((h) => h.measure === 'holdS')).toMatchObject({
      rehearsals: null,
      balls: null,
    });
    expect(lineOf([])).toMatchObject({ rehearsals: null, balls: null, judged: 0 });
  });
});

describe('the examples', () => {
  it('need three scored rehearsals', () => {
    expect(examplesOf([rehearsal(1), rehearsal(2), ball(3)])).toEqual([]);
  });

  it('are typical, best and worst by their rules', () => {
    const session = [
      rehearsal(1, added(30)),
      rehearsal(2, added(5)),
      rehearsal(3, added(1)),
      rehearsal(4, { ...added(-8), holdS: 0.8 }),
      rehearsal(5, { ...added(-9), holdS: 0.4 }),
    ];
    const named = Object.fromEntries(examplesOf(session).map((e) => [e.name, e.index]));
    expect(named).toEqual({ typical: 3, best: 1, worst: 5 });
  });

  it('break a tie by the measure that lies farthest outside its target', () => {
    const session = [rehearsal(1, added(1)), rehearsal(2, added(-20)), rehearsal(3, added(0))];
    expect(examplesOf(session).find((e) => e.name === 'worst')?.index).toBe(2);
  });

  it('leave out a rehearsal that was set to something else', () => {
    const session = [rehearsal(1), rehearsal(2), rehearsal(3)];
    expect(examplesOf(session, new Map([[2, 'ignored']]))).toEqual([]);
  });
});

describe('whether the plan was kept', () => {
  const summary = { rehearsals: 30, balls: 10, ballsInMix: 8, mixKept: false } as SessionSummary;

  const kept = (change: Partial<SessionSummary> = {}, plan = DEFAULT_PLAN, week?: number) =>
    planKept({
      summary: { ...summary, ...change },
      plan,
      ...(week === undefined ? {} : { weekRepetitions: week }),
    });

  it('tells mix and volume', () => {
    const { mix, volume } = kept();
    expect(mix).toMatchObject({ kept: false, balls: 10, ballsInMix: 8 });
    expect(volume).toEqual({ kept: true, done: 40, most: 60 });
    expect(kept({ rehearsals: 51 }).volume.kept).toBe(false);
  });

  it('tells the week only where the other sessions are known', () => {
    expect(kept().week).toBeNull();
    expect(kept({}, DEFAULT_PLAN, 201).week).toEqual({ kept: false, done: 201, most: 200 });
  });

  it('asks for no balls in the stage of movement only', () => {
    expect(kept({}, { ...DEFAULT_PLAN, stage: 'movement' }).mix.asked.balls).toBe(0);
  });
});

describe('two repetitions compared', () => {
  it('differ by what is shown of them, sure to the root of 2 times one accuracy', () => {
    const all = differencesOf(rehearsal(1, added(10.4)), rehearsal(2, added(2.6)));
    const d = all.find((x) => x.measure === 'addedFlexionDeg')!;
    // 10 less 3, though the values are 7.8 apart; 4 times the root of 2 is 5.7
    expect(d).toMatchObject({
      here: '+10°',
      beside: '+3°',
      difference: '+7°',
      plusMinus: '±6°',
      clear: true,
    });
    expect(all.find((x) => x.measure === 'leanChangeDeg')).toMatchObject({
      difference: '0°',
      clear: false,
    });
  });

  it('have no difference in what one of them has not', () => {
    const hold = differencesOf(rehearsal(1), ball(2)).find((x) => x.measure === 'holdS');
    expect(hold).toMatchObject({ beside: 'not measured', difference: null, clear: false });
    expect(differencesOf(ball(1), ball(2)).some((x) => x.measure === 'holdS')).toBe(false);
  });
});
