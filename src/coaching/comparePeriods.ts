import { mean, percentile, variance } from '../math/stats.ts';
import { studentT } from '../math/studentT.ts';
import { TARGET_MEASURES, type TargetMeasure } from './plan.ts';

interface Spread {
  readonly count: number;
  readonly low: number;
  readonly median: number;
  readonly high: number;
}

interface Share {
  readonly scored: number;
  readonly passed: number;
}

type ByMeasure<T> = Partial<Record<TargetMeasure, T>>;

/** What a comparison takes of one session. */
export interface ComparedSession extends Share {
  /** Median and quartiles of each measure. */
  readonly rehearsals: ByMeasure<Spread>;
  readonly balls: ByMeasure<Spread>;
  /** Rehearsals scored and passed, target by target; left out by the versions that did not keep it. */
  readonly checks?: ByMeasure<Share>;
  readonly carryOver: {
    readonly addedFlexion: number | null;
    readonly keptRotation: number | null;
  };
}

/** A usual session of a period: the means of its sessions' values. */
interface UsualSession extends Spread {
  readonly sessions: number;
}

interface Difference {
  /** b minus a. */
  readonly value: number;
  /** `null` with fewer than three sessions on either side, or where no session differs from another. */
  readonly interval: { readonly low: number; readonly high: number } | null;
}

/**
 * `passed` is a share, 0..1, of the rehearsals that were scored: of one target, or of all (`measure` is `null`).
 * `carryOver` is a ratio; `measure` says of what.
 */
interface Compared {
  readonly kind: 'rehearsals' | 'balls' | 'passed' | 'carryOver';
  readonly measure: TargetMeasure | null;
  readonly a: UsualSession | null;
  readonly b: UsualSession | null;
  /** `null` where either has no session. */
  readonly difference: Difference | null;
}

interface Comparison {
  readonly differences: readonly Compared[];
  /** How many intervals there are: all hold at once with 95 %. */
  readonly together: number;
}

/** With two sessions a spread between them can hardly be told: no interval is claimed. A choice. */
const FEWEST_SESSIONS = 3;
const OUTSIDE = 0.05;

/** One thing that is compared, and what a session says of it: once a session. */
interface Subject extends Pick<Compared, 'kind' | 'measure'> {
  readonly of: (session: ComparedSession) => Spread | null;
}

/** A value that a session has once. */
const single = (value: number, count: number): Spread => ({
  count,
  low: value,
  median: value,
  high: value,
});

const shareOf = (share: Share | undefined): Spread | null =>
  share === undefined || share.scored === 0
    ? null
    : single(share.passed / share.scored, share.scored);

const carried = (ratio: number | null): Spread | null => (ratio === null ? null : single(ratio, 1));

const SUBJECTS: readonly Subject[] = [
  { kind: 'passed', measure: null, of: shareOf },
  ...TARGET_MEASURES.map((measure): Subject => ({
    kind: 'passed',
    measure,
    of: (s) => shareOf(s.checks?.[measure]),
  })),
  ...(['rehearsals', 'balls'] as const).flatMap((kind) =>
    TARGET_MEASURES.map((measure): Subject => ({
      kind,
      measure,
      of: (s) => s[kind][measure] ?? null,
    })),
  ),
  { kind: 'carryOver', measure: 'addedFlexionDeg', of: (s) => carried(s.carryOver.addedFlexion) },
  { kind: 'carryOver', measure: 'keptRotationDeg', of: (s) => carried(s.carryOver.keptRotation) },
];

/**
 * Two periods, thing by thing. Repetitions of one session resemble each other (the same day, the same strap), so the
 * session is the unit: each counts once, by its median or share, however many repetitions it had (summary measures:
 * Matthews et al. 1990, BMJ 300:230; units of analysis: Altman & Bland 1997, BMJ 314:1874). The interval is that of the
 * difference of two means with unequal variances (Welch 1947, Biometrika 34:28; degrees of freedom after Satterthwaite
 * 1946): it takes sessions as independent and about normal. Of k intervals each gets 1 - 0.05/k, so that all k hold
 * their true differences at once with at least 95 %, whatever their dependence (Bonferroni; Dunn 1961, J Am Stat Assoc
 * 56:52).
 */
export function comparePeriods(
  a: readonly ComparedSession[],
  b: readonly ComparedSession[],
): Comparison {
  const found = SUBJECTS.map(({ kind, measure, of }) => {
    const [x, y] = [a, b].map((all) => all.flatMap((session) => of(session) ?? []));
    return { kind, measure, x: x!, y: y!, welch: welchOf(x!, y!) };
  }).filter(({ x, y }) => x.length + y.length > 0);
  const together = found.filter(({ welch }) => welch !== null).length;
  const differences = found.map(({ kind, measure, x, y, welch }) => {
    const value = x.length * y.length === 0 ? null : center(y) - center(x);
    const reach = welch === null ? null : studentT(OUTSIDE / together, welch.df) * welch.error;
    const most = kind === 'passed' ? 1 : Infinity;
    return {
      ...{ kind, measure, a: usual(x, kind), b: usual(y, kind) },
      difference: value === null ? null : { value, interval: around(value, reach, most) },
    };
  });
  return { differences, together };
}

const center = (sessions: readonly Spread[]): number => mean(sessions.map((s) => s.median)) ?? 0;

function around(value: number, reach: number | null, most: number): Difference['interval'] {
  if (reach === null) return null;
  return { low: Math.max(-most, value - reach), high: Math.min(most, value + reach) };
}

/** Of a value that a session has once, the middle half is that of the sessions. */
function usual(sessions: readonly Spread[], kind: Compared['kind']): UsualSession | null {
  if (sessions.length === 0) return null;
  const medians = sessions.map((s) => s.median);
  const once = kind === 'passed' || kind === 'carryOver';
  const end = (key: 'low' | 'high', share: number): number =>
    (once ? percentile(medians, share) : mean(sessions.map((s) => s[key]))) ?? 0;
  return {
    sessions: sessions.length,
    count: sessions.reduce((n, s) => n + s.count, 0),
    low: end('low', 0.25),
    median: center(sessions),
    high: end('high', 0.75),
  };
}

/** Of the mean; exactly 0 where all are equal, whatever rounding makes of their mean. */
function squaredError(sessions: readonly Spread[]): number {
  const medians = sessions.map((s) => s.median);
  if (medians.every((m) => m === medians[0])) return 0;
  return (variance(medians) ?? 0) / medians.length;
}

/** Standard error and degrees of freedom of the difference of means; `null` where there is no interval to give. */
function welchOf(a: readonly Spread[], b: readonly Spread[]): { error: number; df: number } | null {
  if (Math.min(a.length, b.length) < FEWEST_SESSIONS) return null;
  const [u, v] = [squaredError(a), squaredError(b)];
  if (u + v === 0) return null;
  const df = (u + v) ** 2 / (u ** 2 / (a.length - 1) + v ** 2 / (b.length - 1));
  return { error: Math.sqrt(u + v), df };
}
