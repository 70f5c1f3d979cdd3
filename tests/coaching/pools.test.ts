import { describe, expect, it } from 'vitest';
import { carryOver } from '../../src/coaching/carryOver.ts';
import { judgeRehearsal } from '../../src/coaching/judge.ts';
import type { JudgedRepetition } from '../../src/coaching/judgement.ts';
import { addToLedger, emptyLedger, ledgerOf } from '../../src/coaching/ledger.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { poolsOf } from '../../src/coaching/pools.ts';
import { summarise } from '../../src/coaching/summary.ts';
import { headlinesOf } from '../../src/dashboard/review/head/headline.ts';
import { spreadsOf } from '../../src/sessions/store/spreads.ts';
import type { RepetitionFlag } from '../../src/swings/repetition.ts';
import { ball, rehearsal } from './repetitions.ts';

const IGNORED = { detected: 'rehearsal', ignored: true } as const;

function practised(
  index: number,
  addedFlexionDeg: number | null,
  flags: readonly RepetitionFlag[] = [],
): JudgedRepetition {
  const r = rehearsal({ index, flags, measures: { addedFlexionDeg } });
  return { ...r, verdict: judgeRehearsal(r, DEFAULT_PLAN) };
}

/** Whole, flagged without harm, with a gap, out of range, ignored, without the value; then balls alike. */
const REPETITIONS: readonly JudgedRepetition[] = [
  practised(1, 10),
  practised(2, 11, ['drift']),
  practised(3, 12),
  practised(4, 40, ['gap']),
  practised(5, 41, ['saturated']),
  { ...practised(6, 42), marked: IGNORED },
  practised(7, null),
  ball({ addedFlexionDeg: 5 }, 8),
  ball({ addedFlexionDeg: 6 }, 9),
  ball({ addedFlexionDeg: 7 }, 10),
  { ...ball({ addedFlexionDeg: 30 }, 11), flags: ['impact-not-seen'] },
  { ...ball({ addedFlexionDeg: 31 }, 12), marked: { detected: 'ball', ignored: true } },
];

const LEDGER = ledgerOf(REPETITIONS.reduce(addToLedger, emptyLedger(DEFAULT_PLAN)));

describe('The numbers of one session', () => {
  const { rehearsals, balls } = poolsOf(REPETITIONS);
  const ratios = carryOver(rehearsals, balls);
  const kept = spreadsOf({ repetitions: REPETITIONS, carryOver: ratios });
  const head = headlinesOf(REPETITIONS, DEFAULT_PLAN);
  const summary = summarise(REPETITIONS, LEDGER, DEFAULT_PLAN);

  it('leave out what is not scored or was ignored, and nothing else', () => {
    expect(rehearsals.map((r) => r.index)).toEqual([1, 2, 3, 7]);
    expect(balls.map((r) => r.index)).toEqual([8, 9, 10]);
    expect(kept.rehearsals.addedFlexionDeg).toMatchObject({ count: 3, median: 11 });
    expect(kept.balls.addedFlexionDeg).toMatchObject({ count: 3, median: 6 });
    expect(ratios.addedFlexion).toBeCloseTo(6 / 11, 12);
  });

  it('have the same n and median at the head, in the summary and in what is kept for progress and hub', () => {
    for (const { measure, ...line } of head) {
      expect(line.rehearsals ?? undefined, measure).toEqual(kept.rehearsals[measure]);
      expect(line.balls ?? undefined, measure).toEqual(kept.balls[measure]);
      expect({ scored: line.judged, passed: line.reached }).toEqual(
        kept.checks![measure] ?? { scored: 0, passed: 0 },
      );
      const summed = summary.byMeasure.find((m) => m.measure === measure);
      if (summed === undefined) continue;
      expect(summed.median, measure).toBe(kept.rehearsals[measure]?.median ?? null);
      expect(summed, measure).toMatchObject({
        passed: line.reached,
        failed: line.judged - line.reached,
      });
    }
    expect(summary.byMeasure.length).toBeGreaterThan(5);
    expect(summary.carryOver).toEqual(ratios);
  });
});
