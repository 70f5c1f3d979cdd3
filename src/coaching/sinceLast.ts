import { type ChangeTexts, changeTexts } from './differenceText.ts';
import { MEASURE_INFO } from './measureInfo.ts';
import { type Plan, TARGET_MEASURES, type Target, type TargetMeasure } from './plan.ts';
import { ADVICE_FEWEST } from './nextStep.ts';
import type { Spread } from './pools.ts';

/** Rehearsals of one counted session, judged by its plan. */
export interface SessionMeasures {
  /** Epoch ms. */
  readonly startedMs: number;
  readonly plan: Pick<Plan, 'targets'>;
  readonly rehearsals: Partial<Readonly<Record<TargetMeasure, Spread>>>;
}

/** A measure's median in one session with the target of its day. */
export interface MeasuredMedian {
  readonly median: number;
  readonly count: number;
  readonly target: Target | null;
}

/** Where the newer median lies, seen from the older one, by the newer target; `null` where neither says anything. */
export type Toward = 'reached' | 'nearer' | 'farther' | 'left' | null;

/**
 * How the newest session compares with the one before. `first`: there is none before. `too-few`: too few rehearsals in
 * either. `same`: no measure changed by more than is sure. `changed`: the measure that changed most for its uncertainty.
 */
export type SinceLast =
  | { readonly kind: 'first' }
  | { readonly kind: 'too-few' | 'same'; readonly beforeMs: number }
  | {
      readonly kind: 'changed';
      readonly beforeMs: number;
      readonly measure: TargetMeasure;
      readonly before: MeasuredMedian;
      readonly now: MeasuredMedian;
      /** What the difference is sure to (about 95 of 100), in the measure's unit. */
      readonly sure: number;
      readonly toward: Toward;
    };

/** Of a standard normal distribution: 95 of 100 lie within. */
const WITHIN_95 = 1.96;
/** Standard error of a median over that of a mean, and quartile distance over standard deviation, of a normal one. */
const OF_MEDIAN = Math.sqrt(Math.PI / 2);
const QUARTILES = 1.349;

/** Half width of the 95 % interval of a session's median from its quartiles: its repetitions differ. */
const scatter = ({ low, high, count }: Spread): number =>
  (WITHIN_95 * OF_MEDIAN * (high - low)) / QUARTILES / Math.sqrt(count);

/**
 * What a difference of two medians is sure to: the measure's accuracy on people twice, since the sensors are put on
 * anew each time, and the scatter of either session's repetitions, taken as independent.
 */
export const sureTo = (measure: TargetMeasure, a: Spread, b: Spread): number =>
  Math.hypot(Math.SQRT2 * MEASURE_INFO[measure].accuracy.plusMinus, scatter(a), scatter(b));

const enough = (spread: Spread | undefined): spread is Spread =>
  spread !== undefined && spread.count >= ADVICE_FEWEST;

const outside = (value: number, { min, max }: Target): number =>
  Math.max(0, (min ?? value) - value, value - (max ?? value));

function towardOf(before: number, now: number, target: Target | null): Toward {
  if (target === null) return null;
  const [then, since] = [outside(before, target), outside(now, target)];
  if (since === 0) return then === 0 ? null : 'reached';
  if (then === 0) return 'left';
  return since === then ? null : since < then ? 'nearer' : 'farther';
}

export type Changed = Extract<SinceLast, { kind: 'changed' }>;

function changeOf(
  measure: TargetMeasure,
  before: SessionMeasures,
  now: SessionMeasures,
): Changed | null {
  const [a, b] = [before.rehearsals[measure], now.rehearsals[measure]];
  if (!enough(a) || !enough(b)) return null;
  const of = ({ plan }: SessionMeasures, { median, count }: Spread): MeasuredMedian => ({
    median,
    count,
    target: plan.targets[measure],
  });
  return {
    kind: 'changed',
    beforeMs: before.startedMs,
    measure,
    before: of(before, a),
    now: of(now, b),
    sure: sureTo(measure, a, b),
    toward: towardOf(a.median, b.median, now.plan.targets[measure]),
  };
}

/** The change as it is shown; the words of a language are added by whoever shows it. */
export const changeShown = (
  change: Changed,
  words?: Parameters<typeof changeTexts>[3],
): ChangeTexts =>
  changeTexts(
    change.measure,
    [change.before, change.now].map(({ median, target }) => ({
      value: median,
      target: target ?? undefined,
    })) as [Shown, Shown],
    change.sure,
    words,
  );

interface Shown {
  readonly value: number;
  readonly target: Target | undefined;
}

const timesSure = ({ before, now, sure }: Changed): number =>
  Math.abs(now.median - before.median) / sure;

/**
 * The newest session beside the one before it. A change is named only where it is more than it is sure to, in truth and
 * as both are shown. @param sessions counted ones, oldest first @returns `null` without any
 */
export function sinceLast(sessions: readonly SessionMeasures[]): SinceLast | null {
  const [before, now] = [sessions.at(-2), sessions.at(-1)];
  if (now === undefined) return null;
  if (before === undefined) return { kind: 'first' };
  const beforeMs = before.startedMs;
  const changes = TARGET_MEASURES.flatMap((measure) => changeOf(measure, before, now) ?? []);
  if (changes.length === 0) return { kind: 'too-few', beforeMs };
  const clear = changes
    .filter((change) => timesSure(change) > 1 && changeShown(change).clear)
    .sort((a, b) => timesSure(b) - timesSure(a));
  return clear[0] ?? { kind: 'same', beforeMs };
}
