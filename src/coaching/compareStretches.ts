import { type Random, seededRandom } from '../math/random.ts';
import { percentile } from '../math/stats.ts';
import { TARGET_MEASURES, type TargetMeasure } from './plan.ts';

/** Every value of each measure over a stretch of time, rehearsals and balls apart. */
export interface StretchValues {
  readonly rehearsals: Partial<Record<TargetMeasure, readonly number[]>>;
  readonly balls: Partial<Record<TargetMeasure, readonly number[]>>;
}

interface Spread {
  readonly count: number;
  readonly low: number;
  readonly median: number;
  readonly high: number;
}

interface Difference {
  /** Median of b less median of a. */
  readonly value: number;
  /** The middle 95 % of the differences of resampled medians. */
  readonly low: number;
  readonly high: number;
}

interface Compared {
  readonly measure: TargetMeasure;
  readonly kind: 'rehearsals' | 'balls';
  readonly a: Spread | null;
  readonly b: Spread | null;
  /** `null` with fewer than five values on either side. */
  readonly difference: Difference | null;
}

/** Choices. The seed is fixed: the same values give the same interval. */
const FEWEST = 5;
const RESAMPLES = 1000;
const MOST_DRAWS = 400_000;
const SEED = 20_260_301;

/**
 * Two stretches of time, measure by measure, all repetitions of each pooled. The interval is a percentile bootstrap
 * (Efron 1979) that takes repetitions as independent; those of one session are alike, so with few sessions it is too narrow.
 */
export const compareStretches = (a: StretchValues, b: StretchValues): readonly Compared[] =>
  (['rehearsals', 'balls'] as const).flatMap((kind) =>
    TARGET_MEASURES.flatMap((measure) => {
      const [x, y] = [a, b].map((s) => (s[kind][measure] ?? []).filter(Number.isFinite));
      return x!.length + y!.length === 0 ? [] : [compared(measure, kind, x!, y!)];
    }),
  );

const compared = (
  measure: TargetMeasure,
  kind: Compared['kind'],
  x: readonly number[],
  y: readonly number[],
): Compared => ({
  measure,
  kind,
  a: spreadOf(x),
  b: spreadOf(y),
  difference: differenceOf(x, y),
});

function spreadOf(values: readonly number[]): Spread | null {
  if (values.length === 0) return null;
  const [low, median, high] = [0.25, 0.5, 0.75].map((p) => percentile(values, p) ?? 0) as [
    number,
    number,
    number,
  ];
  return { count: values.length, low, median, high };
}

function differenceOf(x: readonly number[], y: readonly number[]): Difference | null {
  if (x.length < FEWEST || y.length < FEWEST) return null;
  const [a, b] = [x, y].map((values) => Float64Array.from(values).sort()) as [
    Float64Array,
    Float64Array,
  ];
  const random = seededRandom(SEED);
  const times = Math.max(200, Math.min(RESAMPLES, Math.floor(MOST_DRAWS / (a.length + b.length))));
  const differences = Array.from(
    { length: times },
    () => resampledMedian(b, random) - resampledMedian(a, random),
  );
  return {
    value: (percentile(y, 0.5) ?? 0) - (percentile(x, 0.5) ?? 0),
    low: percentile(differences, 0.025) ?? 0,
    high: percentile(differences, 0.975) ?? 0,
  };
}

/** Median of as many draws with replacement, found by counting how often each place was drawn. */
function resampledMedian(sorted: Float64Array, random: Random): number {
  const n = sorted.length;
  const drawn = new Uint32Array(n);
  for (let i = 0; i < n; i++) drawn[Math.floor(random() * n)]! += 1;
  const lower = placeOf(drawn, Math.floor((n - 1) / 2));
  const upper = placeOf(drawn, Math.floor(n / 2));
  return (sorted[lower]! + sorted[upper]!) / 2;
}

/** Where the draw of this rank (from 0) lies. */
function placeOf(drawn: Uint32Array, rank: number): number {
  let passed = 0;
  for (let place = 0; place < drawn.length; place++) {
    passed += drawn[place]!;
    if (passed > rank) return place;
  }
  return drawn.length - 1;
}
