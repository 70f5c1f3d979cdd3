import { DAY_MS, type Step } from './course.ts';

export interface Day {
  /** Weeks from the first shown day's week, 0 first. */
  readonly week: number;
  /** 0 Monday to 6 Sunday. */
  readonly weekday: number;
  /** Local midnight, epoch ms. */
  readonly atMs: number;
  readonly sessions: number;
  readonly repetitions: number;
  readonly warnings: number;
}

export interface Calendar {
  readonly days: readonly Day[];
  readonly practised: number;
  /** Most days in a row without practice between two practices. */
  readonly longestBreak: number;
}

/** Local noon: adding days to it never slips over a clock change. */
function noonOf(ms: number): number {
  const day = new Date(ms);
  day.setHours(12, 0, 0, 0);
  return day.getTime();
}

const weekdayOf = (noonMs: number): number => (new Date(noonMs).getDay() + 6) % 7;
const dayNumber = (ms: number, firstMs: number): number =>
  Math.round((noonOf(ms) - firstMs) / DAY_MS);

/** Every day from the first session (or `fromMs`) to `toMs`, with what was practised on it. */
export function calendarOf(steps: readonly Step[], fromMs: number, toMs: number): Calendar {
  const firstMs = noonOf(fromMs);
  const shift = weekdayOf(firstMs);
  const count = Math.max(1, dayNumber(toMs, firstMs) + 1);
  const days = Array.from({ length: count }, (_, n) => ({
    week: Math.floor((n + shift) / 7),
    weekday: (n + shift) % 7,
    atMs: noonOf(firstMs + n * DAY_MS),
    sessions: 0,
    repetitions: 0,
    warnings: 0,
  }));
  for (const step of steps) {
    const day = days[dayNumber(step.atMs, firstMs)];
    if (day === undefined) continue;
    day.sessions += 1;
    day.repetitions += step.repetitions;
    day.warnings += step.warnings;
  }
  const practised = [...days.keys()].filter((n) => days[n]!.sessions > 0);
  const breaks = practised.map((n, i) => (i === 0 ? 0 : n - practised[i - 1]! - 1));
  return { days, practised: practised.length, longestBreak: Math.max(0, ...breaks) };
}
