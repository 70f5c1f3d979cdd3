import type { ProgressSession } from '../../../streaming/hubContract/students.ts';

/** What was practised in one month. */
export interface MonthRow {
  /** First of the month where the reader is, epoch ms. */
  readonly atMs: number;
  readonly days: number;
  readonly sessions: number;
  readonly rehearsals: number;
  readonly scored: number;
  readonly passed: number;
  readonly balls: number;
  readonly ballsInMix: number;
  readonly warnings: number;
}

const monthOf = (ms: number): number => {
  const at = new Date(ms);
  return new Date(at.getFullYear(), at.getMonth(), 1).getTime();
};

const sum = (sessions: readonly ProgressSession[], value: (s: ProgressSession) => number): number =>
  sessions.reduce((total, s) => total + value(s), 0);

function rowOf(atMs: number, sessions: readonly ProgressSession[]): MonthRow {
  const days = new Set(sessions.map((s) => new Date(s.startedMs).toDateString()));
  return {
    atMs,
    days: days.size,
    sessions: sessions.length,
    rehearsals: sum(sessions, (s) => s.rehearsalCount),
    scored: sum(sessions, (s) => s.scored),
    passed: sum(sessions, (s) => s.passed),
    balls: sum(sessions, (s) => s.ballCount),
    ballsInMix: sum(sessions, (s) => s.ballsInMix),
    warnings: sum(sessions, (s) => s.warnings),
  };
}

/** Every month in which there was a session, oldest first. */
export function monthRows(sessions: readonly ProgressSession[]): readonly MonthRow[] {
  const months = new Map<number, ProgressSession[]>();
  for (const s of sessions) {
    const atMs = monthOf(s.startedMs);
    months.set(atMs, [...(months.get(atMs) ?? []), s]);
  }
  return [...months].sort(([a], [b]) => a - b).map(([atMs, inMonth]) => rowOf(atMs, inMonth));
}

/** The first of the month `months - 1` months before now. */
export function rangeStart(months: number, nowMs: number): number {
  const now = new Date(nowMs);
  return new Date(now.getFullYear(), now.getMonth() - (months - 1), 1).getTime();
}
