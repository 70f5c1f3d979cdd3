import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MEASURE_INFO } from '../../src/coaching/measureInfo.ts';
import { measureText } from '../../src/coaching/measureText.ts';
import { DEFAULT_PLAN, TARGET_MEASURES, type TargetMeasure } from '../../src/coaching/plan.ts';
import type { Spread } from '../../src/coaching/pools.ts';
import { shownNumber } from '../../src/coaching/shown.ts';
import {
  type SessionMeasures,
  changeShown,
  sinceLast,
  sureTo,
} from '../../src/coaching/sinceLast.ts';

const of = (median: number, half = 0.01, count = 20): Spread => ({
  count,
  low: median - half,
  median,
  high: median + half,
});
const session = (
  day: number,
  rehearsals: SessionMeasures['rehearsals'],
  plan: SessionMeasures['plan'] = DEFAULT_PLAN,
): SessionMeasures => ({ startedMs: day, plan, rehearsals });

describe('since last time', () => {
  it('says nothing without a session, and that the first is the first', () => {
    expect(sinceLast([])).toBeNull();
    expect(sinceLast([session(1, { holdS: of(1) })])).toEqual({ kind: 'first' });
  });

  it('compares with the session right before, where both have five rehearsals', () => {
    const three = [session(1, { holdS: of(3) }), session(2, { holdS: of(0.8) })];
    expect(sinceLast([...three, session(3, { holdS: of(1.2) })])).toMatchObject({
      kind: 'changed',
      beforeMs: 2,
      measure: 'holdS',
      before: { median: 0.8, count: 20 },
      now: { median: 1.2 },
      toward: 'reached',
    });
    const few = session(3, { holdS: of(1.2, 0.01, 4), chestLeadMs: of(300, 1, 4) });
    expect(sinceLast([...three, few])).toEqual({ kind: 'too-few', beforeMs: 2 });
  });

  it('names the measure that changed most for its uncertainty, not the greatest number', () => {
    const before = session(1, {
      holdS: of(0.9),
      keptRotationDeg: of(-20),
      releaseToCatchMs: of(400),
    });
    const now = session(2, { holdS: of(1.3), keptRotationDeg: of(-2), releaseToCatchMs: of(430) });
    expect(sinceLast([before, now])).toMatchObject({ measure: 'holdS' });
  });

  it.each([
    [0.8, 1.2, 'reached'],
    [0.4, 0.8, 'nearer'],
    [0.8, 0.4, 'farther'],
    [1.2, 0.8, 'left'],
    [1.2, 1.8, null],
  ])('a hold of %d then %d s is seen from its target: %j', (a, b, toward) => {
    const found = sinceLast([session(1, { holdS: of(a) }), session(2, { holdS: of(b) })]);
    expect(found).toMatchObject({ kind: 'changed', toward });
  });

  it('is as last time within what is sure, however many repetitions there were', () => {
    const pair = (then: number, since: number, half = 0.1): readonly SessionMeasures[] => [
      session(1, { leanChangeDeg: of(then, half, 1000) }),
      session(2, { leanChangeDeg: of(since, half, 1000) }),
    ];
    expect(sinceLast(pair(-5, 0))).toEqual({ kind: 'same', beforeMs: 1 });
    expect(sinceLast(pair(-5, 2))).toMatchObject({ kind: 'changed', measure: 'leanChangeDeg' });
    const spread = pair(-5, 2, 60);
    expect(sinceLast(spread)).toEqual({ kind: 'same', beforeMs: 1 });
  });

  const scale: Record<TargetMeasure, number> = {
    holdS: 0.01,
    chestLeadMs: 1,
    leanChangeDeg: 0.1,
    addedFlexionDeg: 0.1,
    keptRotationDeg: 0.1,
    turnTowardTargetDeg: 0.1,
    releaseToCatchMs: 1,
  };
  const anySpread = (measure: TargetMeasure) =>
    fc
      .record({
        count: fc.integer({ min: 1, max: 40 }),
        low: fc.integer({ min: -600, max: 600 }),
        up: fc.integer({ min: 0, max: 200 }),
        more: fc.integer({ min: 0, max: 200 }),
      })
      .map(({ count, low, up, more }): Spread => {
        const unit = scale[measure];
        return {
          count,
          low: low * unit,
          median: (low + up) * unit,
          high: (low + up + more) * unit,
        };
      });
  const anySession = fc
    .record(
      Object.fromEntries(TARGET_MEASURES.map((m) => [m, anySpread(m)])) as {
        [M in TargetMeasure]: ReturnType<typeof anySpread>;
      },
      { requiredKeys: [] },
    )
    .map((rehearsals) => session(1, rehearsals as SessionMeasures['rehearsals']));

  it('never names what is within its uncertainty, misses nothing clear, and shows what Progress shows', () => {
    fc.assert(
      fc.property(anySession, anySession, (before, now) => {
        const found = sinceLast([before, now]);
        const ratio = (m: TargetMeasure): number => {
          const [a, b] = [before.rehearsals[m], now.rehearsals[m]];
          if (a === undefined || b === undefined || a.count < 5 || b.count < 5) return 0;
          return Math.abs(b.median - a.median) / sureTo(m, a, b);
        };
        const most = Math.max(...TARGET_MEASURES.map(ratio));
        if (found?.kind !== 'changed') {
          expect(most).toBeLessThan(1.5);
          return;
        }
        const { measure: key, before: a, now: b } = found;
        const target = DEFAULT_PLAN.targets[key] ?? undefined;
        const texts = changeShown(found);
        expect(texts.clear).toBe(true);
        expect(texts.before).toBe(measureText(key, a.median, target));
        expect(texts.now).toBe(measureText(key, b.median, target));
        const [then, since] = [a, b].map(({ median }) =>
          Number(shownNumber(median, MEASURE_INFO[key].decimals, [target])),
        ) as [number, number];
        const difference = Number(texts.difference.replace(/[^-+.\d]/g, ''));
        expect(difference).toBeCloseTo(since - then, 9);
        expect(Math.abs(difference)).toBeGreaterThan(
          Number(texts.plusMinus.replace(/[^.\d]/g, '')),
        );
        expect(ratio(key)).toBeGreaterThan(1);
      }),
      { numRuns: 400 },
    );
  });
});
