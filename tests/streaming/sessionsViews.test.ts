import { expect, it } from 'vitest';
import type { SessionSummary } from '../../src/sessions/store/rows.ts';
import { weekRepetitions } from '../../src/streaming/sessionsViews.ts';

const at = (day: number, rehearsals: number, balls: number): SessionSummary =>
  ({
    startedMs: day * 86_400_000,
    analysed: true,
    rehearsals,
    balls,
  }) as SessionSummary;

it('a week is the seven days that end with the session, later sessions left out', () => {
  const all = [at(20, 50, 5), at(14, 20, 10), at(10, 8, 0), at(7.1, 4, 1), at(7, 100, 0)];
  expect(weekRepetitions(all, all[1]!)).toBe(20 + 10 + 8 + 4 + 1);
});
