import type { Stretches } from '../client/students.ts';

const DAY_MS = 86_400_000;

export const PRESETS = ['year', 'month', 'quarter'] as const;
export type Preset = (typeof PRESETS)[number];

/** First of the month where the reader is, `back` months before. */
function monthStart(nowMs: number, back: number): number {
  const now = new Date(nowMs);
  return new Date(now.getFullYear(), now.getMonth() - back, 1).getTime();
}

/** Midnight after today. */
function dayAfter(nowMs: number): number {
  const now = new Date(nowMs);
  return new Date(now.getFullYear(), now.getMonth(), now.getDate() + 1).getTime();
}

/** Two stretches that coaches ask for; the earlier is `a`. */
export function presetStretches(preset: Preset, nowMs: number): Stretches {
  const end = dayAfter(nowMs);
  switch (preset) {
    case 'year':
      return {
        aFromMs: monthStart(nowMs, 12),
        aToMs: monthStart(nowMs, 11),
        bFromMs: monthStart(nowMs, 0),
        bToMs: end,
      };
    case 'month': {
      const [half, start] = [end - 28 * DAY_MS, end - 56 * DAY_MS];
      return { aFromMs: start, aToMs: half, bFromMs: half, bToMs: end };
    }
    case 'quarter': {
      const [half, start] = [monthStart(nowMs, 2), monthStart(nowMs, 5)];
      return { aFromMs: start, aToMs: half, bFromMs: half, bToMs: end };
    }
  }
}

const NAMES = ['aFromMs', 'aToMs', 'bFromMs', 'bToMs'] as const;

/** As `writeStretches` writes them; `null` where the query holds none that can be. */
export function readStretches(query: string): Stretches | null {
  const asked = new URLSearchParams(query);
  const [aFromMs, aToMs, bFromMs, bToMs] = NAMES.map((name) => Number(asked.get(name) ?? NaN));
  if (!(aFromMs! < aToMs! && bFromMs! < bToMs!)) return null;
  return { aFromMs: aFromMs!, aToMs: aToMs!, bFromMs: bFromMs!, bToMs: bToMs! };
}

export const writeStretches = (stretches: Stretches): string =>
  NAMES.map((name) => `${name}=${stretches[name]}`).join('&');
