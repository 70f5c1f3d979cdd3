import { expect, it } from 'vitest';
import { DRILL } from '../../../src/dashboard/drill/model.ts';
import { sessionToShow } from '../../../src/dashboard/drill/ownBest.ts';
import { later } from '../../../src/dashboard/drill/useLoop.ts';
import type { SessionSummary } from '../../../src/streaming/sessionsContract.ts';

it('the loop passes every moment, the fall four times slower, and begins again', () => {
  expect(later(1, 0.02)).toBeCloseTo(1.02, 12);
  expect(later(DRILL.releaseS + 0.1, 0.02)).toBeCloseTo(DRILL.releaseS + 0.105, 12);
  expect(later(DRILL.endS - 0.01, 0.02)).toBe(0);
});

const session = (id: string, more: Partial<SessionSummary>): SessionSummary =>
  ({ id, scored: 3, simulated: false, deleted: false, ...more }) as SessionSummary;

it('shows the newest own session with a scored rehearsal, a simulated one only where there is no other', () => {
  const simulated = session('simulated', { simulated: true });
  const unscored = session('unscored', { scored: 0 });
  expect(sessionToShow([simulated, unscored, session('own', {})])?.id).toBe('own');
  expect(sessionToShow([simulated, unscored])?.id).toBe('simulated');
  expect(sessionToShow([unscored])).toBeNull();
});
