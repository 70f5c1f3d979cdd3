import { mean, variance } from '../math/stats.ts';
import { studentT } from '../math/studentT.ts';
import { TARGET_MEASURES, type TargetMeasure } from './plan.ts';

interface Spread {
  readonly count: number;
  readonly low: number;
  readonly median: number;
  readonly high: number;
}

/** One session: median and quartiles of each measure, rehearsals and balls apart. */
export interface SessionSpreads {
  readonly rehearsals: Partial<Record<TargetMeasure, Spread>>;
  readonly balls: Partial<Record<TargetMeasure, Spread>>;
}

/** A usual session of a stretch: the means of its sessions' medians and quartiles. */
interface UsualSession extends Spread {
  readonly sessions: number;
}

interface Difference {
  /** b less a. */
  readonly value: number;
  /** 95 %; `null` with fewer than three sessions on either side. */
  readonly interval: { readonly low: number; readonly high: number } | null;
}

interface Compared {
  readonly measure: TargetMeasure;
  readonly kind: 'rehearsals' | 'balls';
  readonly a: UsualSession | null;
  readonly b: UsualSession | null;
  /** `null` where either has no session. */
  readonly difference: Difference | null;
}

/** With two sessions a spread between them can hardly be told: no interval is claimed. A choice. */
const FEWEST_SESSIONS = 3;
const OUTSIDE = 0.05;

/**
 * Two stretches of time, measure by measure. Repetitions of one session resemble each other (the same day, the same
 * strap), so the session is the unit: each counts once, by its median, however many repetitions it had (summary
 * measures: Matthews et al. 1990, BMJ 300:230; units of analysis: Altman & Bland 1997, BMJ 314:1874). The interval is
 * that of the difference of two means with unequal variances (Welch 1947, Biometrika 34:28; degrees of freedom after
 * Satterthwaite 1946): it takes session medians as independent and about normal.
 */
export const compareStretches = (
  a: readonly SessionSpreads[],
  b: readonly SessionSpreads[],
): readonly Compared[] =>
  (['rehearsals', 'balls'] as const).flatMap((kind) =>
    TARGET_MEASURES.flatMap((measure) => {
      const [x, y] = [a, b].map((all) => all.flatMap((session) => session[kind][measure] ?? []));
      return x!.length + y!.length === 0
        ? []
        : [{ measure, kind, a: usual(x!), b: usual(y!), difference: differenceOf(x!, y!) }];
    }),
  );

function usual(sessions: readonly Spread[]): UsualSession | null {
  if (sessions.length === 0) return null;
  const of = (key: 'low' | 'median' | 'high'): number => mean(sessions.map((s) => s[key])) ?? 0;
  return {
    sessions: sessions.length,
    count: sessions.reduce((n, s) => n + s.count, 0),
    low: of('low'),
    median: of('median'),
    high: of('high'),
  };
}

function differenceOf(a: readonly Spread[], b: readonly Spread[]): Difference | null {
  if (a.length === 0 || b.length === 0) return null;
  const [x, y] = [a, b].map((all) => all.map((s) => s.median)) as [number[], number[]];
  const value = (mean(y) ?? 0) - (mean(x) ?? 0);
  if (Math.min(x.length, y.length) < FEWEST_SESSIONS) return { value, interval: null };
  const reach = welchReach(x, y);
  return { value, interval: { low: value - reach, high: value + reach } };
}

/** Half the width of Welch's 95 % interval. */
function welchReach(x: readonly number[], y: readonly number[]): number {
  const [u, v] = [x, y].map((all) => (variance(all) ?? 0) / all.length) as [number, number];
  if (u + v === 0) return 0;
  const df = (u + v) ** 2 / (u ** 2 / (x.length - 1) + v ** 2 / (y.length - 1));
  return studentT(OUTSIDE, df) * Math.sqrt(u + v);
}
