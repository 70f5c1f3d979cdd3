import { describe, expect, it } from 'vitest';
import { dayEnd, dayInput, dayStart } from '../../../src/dashboard/hub/parts/days.ts';
import { monthRows, rangeStart } from '../../../src/dashboard/hub/report/months.ts';
import { progressEntries } from '../../../src/dashboard/hub/student/progressEntries.ts';
import {
  PRESETS,
  asLong,
  daysBetween,
  presetPeriods,
  readPeriods,
  unevenness,
  writePeriods,
} from '../../../src/dashboard/hub/student/periods.ts';
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

describe('periods to compare', () => {
  const now = at(2026, 3, 15, 10);

  it('are equally long on every day of the year, end with today, and share no day', () => {
    for (let day = 0; day < 400; day++)
      for (const preset of PRESETS) {
        const p = presetPeriods(preset, at(2026, 1, 1 + day, 10));
        const [a, b] = [daysBetween(p.aFromMs, p.aToMs), daysBetween(p.bFromMs, p.bToMs)];
        expect(a, `${preset} on day ${day}`).toBe(b);
        expect(p.bToMs).toBe(at(2026, 1, 2 + day));
        expect(p.aToMs).toBeLessThanOrEqual(p.bFromMs);
        expect(asLong(p)).toEqual(p);
      }
  });

  it('on the first of a month are still four whole weeks and the same weekdays a year ago', () => {
    expect(presetPeriods('year', at(2025, 12, 1, 8))).toEqual({
      aFromMs: at(2024, 11, 5),
      aToMs: at(2024, 12, 3),
      bFromMs: at(2025, 11, 4),
      bToMs: at(2025, 12, 2),
    });
  });

  it('say where one is far shorter, has far fewer sessions, or shares days with the other', () => {
    const period = (from: number, to: number, sessions: number) => ({
      fromMs: at(2026, 3, from),
      toMs: at(2026, 3, to),
      sessions,
    });
    const none = { days: null, sessions: null, overlap: false };
    expect(unevenness(period(1, 11, 5), period(11, 21, 4))).toEqual(none);
    expect(unevenness(period(1, 2, 5), period(11, 32, 5))).toEqual({ ...none, days: [1, 21] });
    expect(unevenness(period(1, 11, 6), period(11, 21, 3))).toEqual({ ...none, sessions: [6, 3] });
    expect(unevenness(period(1, 11, 5), period(10, 20, 5))).toEqual({ ...none, overlap: true });
  });

  it('stand in the address and are refused where they end before they begin', () => {
    const periods = presetPeriods('weeks', now);
    expect(readPeriods(writePeriods(periods))).toEqual(periods);
    expect(readPeriods('aFromMs=5&aToMs=4&bFromMs=1&bToMs=2')).toBeNull();
    expect(readPeriods('')).toBeNull();
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
      notCounted: [],
      plans: [],
      lessons: [],
    };
    expect(progressEntries(progress).map((e) => e.planChanged)).toEqual([false, false, true]);
  });
});
