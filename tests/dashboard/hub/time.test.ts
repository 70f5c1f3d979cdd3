import { describe, expect, it } from 'vitest';
import { dayEnd, dayInput, dayStart } from '../../../src/dashboard/hub/parts/days.ts';
import { monthRows, rangeStart } from '../../../src/dashboard/hub/report/months.ts';
import { progressEntries } from '../../../src/dashboard/hub/student/progressEntries.ts';
import {
  presetStretches,
  readStretches,
  writeStretches,
} from '../../../src/dashboard/hub/student/stretches.ts';
import type { HubProgress, ProgressSession } from '../../../src/streaming/hubContract/students.ts';

const at = (year: number, month: number, date: number, hour = 0): number =>
  new Date(year, month - 1, date, hour).getTime();

const session = (startedMs: number, more: Partial<ProgressSession> = {}): ProgressSession => ({
  id: `${startedMs}`,
  startedMs,
  simulated: false,
  rehearsals: {},
  balls: {},
  rehearsalCount: 10,
  ballCount: 5,
  ballsInMix: 4,
  scored: 9,
  passed: 6,
  warnings: 1,
  painBefore: null,
  painAfter: null,
  planNumber: 1,
  carryOver: { addedFlexion: null, keptRotation: null },
  ...more,
});

describe('days of a date field', () => {
  it('are the days of the reader, also where a day has 23 hours', () => {
    expect(dayInput(at(2026, 3, 9, 15))).toBe('2026-03-09');
    expect(dayStart('2026-03-09')).toBe(at(2026, 3, 9));
    expect(dayEnd('2026-03-31')).toBe(at(2026, 4, 1));
  });

  it('are refused where there is no such day', () => {
    expect(dayStart('2026-02-30')).toBeNull();
    expect(dayStart('soon')).toBeNull();
  });
});

describe('stretches to compare', () => {
  const now = at(2026, 3, 15, 10);

  it('are this month and the whole same month a year ago', () => {
    expect(presetStretches('year', now)).toEqual({
      aFromMs: at(2025, 3, 1),
      aToMs: at(2025, 4, 1),
      bFromMs: at(2026, 3, 1),
      bToMs: at(2026, 3, 16),
    });
  });

  it('lie next to each other without a day in both', () => {
    for (const preset of ['month', 'quarter'] as const) {
      const { aToMs, bFromMs } = presetStretches(preset, now);
      expect(aToMs).toBe(bFromMs);
    }
  });

  it('stand in the address and are refused where they end before they begin', () => {
    const stretches = presetStretches('month', now);
    expect(readStretches(writeStretches(stretches))).toEqual(stretches);
    expect(readStretches('aFromMs=5&aToMs=4&bFromMs=1&bToMs=2')).toBeNull();
    expect(readStretches('')).toBeNull();
  });
});

describe('months of a report', () => {
  it('add up sessions and count days, not sessions, of practice', () => {
    const rows = monthRows([
      session(at(2026, 1, 31, 9)),
      session(at(2026, 1, 31, 18)),
      session(at(2026, 2, 1, 9)),
    ]);
    expect(rows.map(({ days, sessions, rehearsals }) => [days, sessions, rehearsals])).toEqual([
      [1, 2, 20],
      [1, 1, 10],
    ]);
    expect(rows[0]).toMatchObject({ scored: 18, passed: 12, balls: 10, ballsInMix: 8 });
  });

  it('begin on the first of the month', () => {
    expect(rangeStart(1, at(2026, 3, 15))).toBe(at(2026, 3, 1));
    expect(rangeStart(6, at(2026, 3, 15))).toBe(at(2025, 10, 1));
  });
});

describe('months of the hub', () => {
  it('say where the plan changed', () => {
    const progress: HubProgress = {
      sessions: [session(1), session(2), session(3, { planNumber: 2 })],
      plans: [],
      lessons: [],
    };
    expect(progressEntries(progress).map((e) => e.planChanged)).toEqual([false, false, true]);
  });
});
