import { describe, expect, it } from 'vitest';
import { DEFAULT_PLAN, type Plan, TARGET_MEASURES } from '../../src/coaching/plan.ts';
import type { SessionSummary } from '../../src/sessions/store/rows.ts';
import { todayView } from '../../src/streaming/todayApi.ts';

const PLAN: Plan = {
  ...DEFAULT_PLAN,
  stage: 'movement',
  targets: {
    ...(Object.fromEntries(TARGET_MEASURES.map((m) => [m, null])) as unknown as Plan['targets']),
    holdS: { min: 1 },
  },
};
const kept = (day: number, own: Partial<SessionSummary> = {}): SessionSummary =>
  ({
    id: `s${day}`,
    startedMs: day,
    state: 'complete',
    simulated: false,
    analysed: true,
    problem: null,
    rehearsals: 8,
    balls: 2,
    note: '',
    warningCount: 0,
    painBefore: 0,
    painAfter: 0,
    plan: PLAN,
    spreads: { rehearsals: { holdS: { count: 8, low: 1.1, median: 1.2, high: 1.3 } }, balls: {} },
    ...own,
  }) as SessionSummary;
const three = [kept(3), kept(2), kept(1)];

describe('what the first page says of the practice before', () => {
  it('is the newest practice, how it compares and what may come next', () => {
    expect(todayView(three, PLAN, null)).toMatchObject({
      last: { startedMs: 3, notCounted: null, repetitions: 10 },
      since: { kind: 'same', beforeMs: 2 },
      proposal: { kind: 'stage', stage: 'short-swings' },
    });
  });

  it('proposes nothing until the newest practice is known, and goes on comparing what is', () => {
    for (const state of [{}, { state: 'running' as const }, { problem: 'no calibration' }]) {
      const view = todayView([kept(4, { analysed: false, ...state }), ...three], PLAN, null);
      expect(view.proposal).toBeNull();
      expect(view.last?.notCounted).not.toBeNull();
      expect(view.since).toMatchObject({ beforeMs: 2 });
    }
  });

  it('takes no simulated session for a practice', () => {
    const simulated = [kept(4, { simulated: true })];
    expect(todayView(simulated, PLAN, null)).toMatchObject({
      last: null,
      onlySimulated: true,
      since: null,
      proposal: null,
    });
    expect(todayView([...simulated, ...three], PLAN, null).last?.startedMs).toBe(3);
    expect(todayView([], PLAN, null).onlySimulated).toBe(false);
  });
});
