import type { Periods } from '../client/students.ts';

export const PRESETS = ['weeks', 'year', 'quarter'] as const;
export type Preset = (typeof PRESETS)[number];

/** Midnight of a day so many days later, where the reader is: a day may have 23 hours. */
export function daysLater(ms: number, days: number): number {
  const at = new Date(ms);
  return new Date(at.getFullYear(), at.getMonth(), at.getDate() + days).getTime();
}

/** How long each period is, and how much earlier the first begins, days: whole weeks, so that both have the same weekdays. */
const DAYS: Readonly<Record<Preset, readonly [length: number, earlier: number]>> = {
  weeks: [28, 28],
  year: [28, 364],
  quarter: [84, 84],
};

/** Two periods of equal length; the later ends with today, the earlier is `a`. */
export function presetPeriods(preset: Preset, nowMs: number): Periods {
  const [length, earlier] = DAYS[preset];
  const bToMs = daysLater(nowMs, 1);
  const [bFromMs, aToMs] = [daysLater(bToMs, -length), daysLater(bToMs, -earlier)];
  return { aFromMs: daysLater(aToMs, -length), aToMs, bFromMs, bToMs };
}

/** Whole days of a period. */
export const daysBetween = (fromMs: number, toMs: number): number =>
  Math.round((toMs - fromMs) / 86_400_000);

/** The earlier period with the length of the later one. */
export const asLong = (p: Periods): Periods => ({
  ...p,
  aToMs: daysLater(p.aFromMs, daysBetween(p.bFromMs, p.bToMs)),
});

const NAMES = ['aFromMs', 'aToMs', 'bFromMs', 'bToMs'] as const;

/** As `writePeriods` writes them; `null` where the query holds none that can be. */
export function readPeriods(query: string): Periods | null {
  const asked = new URLSearchParams(query);
  const [aFromMs, aToMs, bFromMs, bToMs] = NAMES.map((name) => Number(asked.get(name) ?? NaN));
  if (!(aFromMs! < aToMs! && bFromMs! < bToMs!)) return null;
  return { aFromMs: aFromMs!, aToMs: aToMs!, bFromMs: bFromMs!, bToMs: bToMs! };
}

export const writePeriods = (periods: Periods): string =>
  NAMES.map((name) => `${name}=${periods[name]}`).join('&');

interface Counted {
  readonly fromMs: number;
  readonly toMs: number;
  readonly sessions: number;
}

/** What makes two periods uneven: one is far shorter, has far fewer sessions, or shares days with the other. */
export interface Uneven {
  readonly days: readonly [number, number] | null;
  readonly sessions: readonly [number, number] | null;
  readonly overlap: boolean;
}

/** Far less: under two thirds of the days, at most half of the sessions. Choices. */
const SHORT = 2 / 3;
const FEW = 1 / 2;

export function unevenness(a: Counted, b: Counted): Uneven {
  const days = [daysBetween(a.fromMs, a.toMs), daysBetween(b.fromMs, b.toMs)] as const;
  const sessions = [a.sessions, b.sessions] as const;
  return {
    days: Math.min(...days) < SHORT * Math.max(...days) ? days : null,
    sessions: Math.min(...sessions) <= FEW * Math.max(...sessions) ? sessions : null,
    overlap: a.fromMs < b.toMs && b.fromMs < a.toMs,
  };
}
