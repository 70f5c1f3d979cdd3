import { percentile } from '../../src/math/stats.ts';
import type { JudgedRepetition } from '../../src/analysis/result.ts';
import type { TruthMeasures } from '../../src/sensors/sources/synthetic/measures.ts';
import type { TruthRepetition } from '../../src/sensors/sources/synthetic/truth.ts';
import type { Case, Match } from './accuracyCases.ts';

/** One comparison, with what is needed to see it again. */
interface Deviation {
  readonly error: number;
  readonly truth: number;
  readonly found: number;
  readonly seed: number;
  readonly hand: 'left' | 'right';
  /** Top of the repetition, true s. */
  readonly atS: number;
  readonly what: string;
  readonly flags: readonly string[];
}

export interface Figure {
  readonly name: string;
  readonly unit: string;
  readonly n: number;
  readonly median: number | null;
  readonly p95: number | null;
  readonly max: number | null;
  /** On the 95th percentile; `null` where the design states none. */
  readonly bound: number | null;
  readonly met: boolean | null;
  readonly worst: readonly Deviation[];
}

interface Quantity {
  readonly name: string;
  readonly unit: string;
  readonly bound: number | null;
  of(match: Match): readonly [truth: number | null, found: number | null] | null;
}

const measure = (name: keyof TruthMeasures, bound: number | null, kind: string): Quantity => ({
  name: kind === 'rehearsal' ? name : `${kind} ${name}`,
  unit: /Ms$/.test(name) ? 'ms' : /Cm$/.test(name) ? 'cm' : 'deg',
  bound,
  of: ({ truth, found }) =>
    found?.kind === kind && truth.kind === kind
      ? [truth.measures[name], found.measures[name]]
      : null,
});

type Rehearsal = Extract<TruthRepetition, { kind: 'rehearsal' }>;
type FoundRehearsal = Extract<JudgedRepetition, { kind: 'rehearsal' }>;

const ofRehearsal = (
  name: string,
  bound: number | null,
  of: (truth: Rehearsal, found: FoundRehearsal) => readonly [number | null, number | null],
): Quantity => ({
  name,
  unit: 'ms',
  bound,
  of: ({ truth, found }) => {
    if (truth.kind !== 'rehearsal' || found?.kind !== 'rehearsal') return null;
    const [a, b] = of(truth, found);
    return [a === null ? null : a * 1000, b === null ? null : b * 1000];
  },
});

/** Bounds: design page, "Accuracy to reach" (95th percentile of absolute error). */
const QUANTITIES: readonly Quantity[] = [
  ...(
    [
      ['flexionTopDeg', 1],
      ['flexionCatchDeg', 1],
      ['flexionGainDeg', 1],
      ['turnExplainedDeg', null],
      ['addedFlexionDeg', 1],
      ['leanChangeDeg', 1],
      ['lateralChangeDeg', 1],
      ['turnTopDeg', 2],
      ['turnTowardTargetDeg', 2],
      ['keptRotationDeg', 3],
      ['elevationTopDeg', 2],
      ['externalRotationTopDeg', null],
      ['chestLeadMs', null],
      ['releaseToCatchMs', null],
      ['fallCm', null],
    ] as const
  ).map(([name, bound]) => measure(name, bound, 'rehearsal')),
  ofRehearsal('backswing start', null, (t, f) => [t.startS, f.startS]),
  ofRehearsal('top', null, (t, f) => [t.topS, f.topS]),
  ofRehearsal('hold', null, (t, f) => [t.holdS, f.holdS]),
  ofRehearsal('release (chest start)', 25, (t, f) => [t.chestOnsetS, f.releaseS]),
  ofRehearsal('arm start', 25, (t, f) => [t.armOnsetS, f.armStartS]),
  ofRehearsal('catch', 15, (t, f) => [t.catchS, f.catchS]),
  ...(['addedFlexionDeg', 'leanChangeDeg', 'turnTowardTargetDeg', 'keptRotationDeg'] as const).map(
    (name) => measure(name, null, 'ball'),
  ),
  {
    name: 'ball delivery',
    unit: 'ms',
    bound: null,
    of: ({ truth, found }) =>
      truth.kind === 'ball' && found?.kind === 'ball'
        ? [truth.deliveryS * 1000, found.deliveryS * 1000]
        : null,
  },
  {
    name: 'ball impact',
    unit: 'ms',
    bound: null,
    of: ({ truth, found }) =>
      truth.kind === 'ball' && found?.kind === 'ball'
        ? [truth.impactS * 1000, found.impactS! * 1000]
        : null,
  },
];

const whatOf = (r: TruthRepetition): string =>
  r.kind === 'rehearsal' ? `rehearsal ${r.fault ?? 'good'}` : r.kind;

/** A repetition that the analysis itself marks as touched by a gap is not scored, here as there. */
const scored = ({ found }: Match): boolean => !(found?.flags.includes('gap') ?? false);

function deviationOf(c: Case, match: Match, quantity: Quantity): Deviation | null {
  if (!scored(match)) return null;
  const [truth, found] = quantity.of(match) ?? [null, null];
  if (truth === null || found === null) return null;
  return {
    error: found - truth,
    truth,
    found,
    seed: c.options.seed,
    hand: c.options.hand ?? 'right',
    atS: match.truth.topS,
    what: whatOf(match.truth),
    flags: match.found?.flags ?? [],
  };
}

const WORST = 3;

export function figures(cases: readonly { c: Case; pairs: readonly Match[] }[]): Figure[] {
  return QUANTITIES.map((quantity) => {
    const all = cases
      .flatMap(({ c, pairs }) => pairs.map((p) => deviationOf(c, p, quantity)))
      .filter((d) => d !== null);
    const sizes = all.map((d) => Math.abs(d.error));
    const p95 = percentile(sizes, 0.95);
    const { name, unit, bound } = quantity;
    return {
      name,
      unit,
      n: all.length,
      median: percentile(sizes, 0.5),
      p95,
      max: percentile(sizes, 1),
      bound,
      met: bound === null || p95 === null ? null : p95 <= bound,
      worst: all.sort((a, b) => Math.abs(b.error) - Math.abs(a.error)).slice(0, WORST),
    };
  });
}

export interface KindScore {
  readonly kind: string;
  readonly truths: number;
  readonly found: number;
  readonly right: number;
  readonly precision: number | null;
  readonly recall: number | null;
  readonly f1: number | null;
}

const ratio = (a: number, b: number): number | null => (b === 0 ? null : a / b);

export function kindScores(
  cases: readonly { pairs: readonly Match[]; extra: readonly JudgedRepetition[] }[],
): KindScore[] {
  const pairs = cases.flatMap((c) => c.pairs);
  const extra = cases.flatMap((c) => c.extra);
  return (['rehearsal', 'ball', 'practiceSwing'] as const).map((kind) => {
    const truths = pairs.filter((p) => p.truth.kind === kind).length;
    const right = pairs.filter((p) => p.truth.kind === kind && p.found?.kind === kind).length;
    const found =
      pairs.filter((p) => p.found?.kind === kind).length +
      extra.filter((r) => r.kind === kind).length;
    const [precision, recall] = [ratio(right, found), ratio(right, truths)];
    const f1 = ratio(2 * right, truths + found);
    return { kind, truths, found, right, precision, recall, f1 };
  });
}
