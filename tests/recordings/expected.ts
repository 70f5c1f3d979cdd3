import type {
  SimulatedSession,
} from '../../src/sensors/sources/synthetic/index.ts';
import { median } from '../../src/math/stats.ts';
import type { TruthMeasures } from '../../src/sensors/sources/synthetic/measures.ts';
import type { TruthRepetition } from '../../src/sensors/sources/synthetic/truth.ts';
import { trulyFailed } from '../bench/accuracyVerdicts.ts';
import type { Shipped } from './sessions.ts';

/** Largest allowed absolute deviation from the truth. */
interface Tolerances {
  readonly measures: Partial<Record<keyof TruthMeasures, number>>;
  readonly timesS: Readonly<Record<'startS' | 'topS' | 'releaseS' | 'armStartS' | 'catchS', number>>;
  readonly holdS: number;
}

export interface ExpectedRepetition {
  readonly kind: TruthRepetition['kind'];
  /** The fault that was played; `null` for a good rehearsal and all that is none. */
  readonly fault: string | null;
  readonly startS: number;
  readonly topS: number;
  readonly releaseS: number | null;
  readonly armStartS: number | null;
  readonly catchS: number | null;
  readonly holdS: number | null;
  readonly measures: TruthMeasures;
  /** Targets of the default plan that it truly misses; `null` where it is no rehearsal. */
  readonly failed: readonly string[] | null;
  /** A loss too long to bridge lies between its start and its catch: it must not be scored. */
  readonly gap: boolean;
  /** Samples of the arm sensor within 30 ms of the catch were lost: its time can only be guessed. */
  readonly shockLost: boolean;
}

export interface Expected {
  readonly schema: 1;
  readonly about: string;
  readonly simulated: { readonly seed: number; readonly script: string };
  readonly hand: 'left' | 'right';
  readonly calibrationAccepted: boolean;
  readonly counts: Readonly<Record<TruthRepetition['kind'], number>>;
  /** Rehearsals and balls in order. */
  readonly entries: string;
  readonly repetitions: readonly ExpectedRepetition[];
  readonly tolerances: Tolerances;
}

/**
 * Twice the bounds that the design sets on the 95th percentile ("Accuracy to reach"): here every
 * single value counts. Without such a bound: a choice.
 */
const TOLERANCES: Tolerances = {
  measures: {
    flexionTopDeg: 2,
    flexionCatchDeg: 2,
    flexionGainDeg: 2,
    addedFlexionDeg: 2,
    leanChangeDeg: 2,
    lateralChangeDeg: 2,
    turnTopDeg: 4,
    turnTowardTargetDeg: 4,
    keptRotationDeg: 6,
    elevationTopDeg: 4,
    externalRotationTopDeg: 8,
    chestLeadMs: 50,
    releaseToCatchMs: 50,
  },
  timesS: { startS: 0.1, topS: 0.06, releaseS: 0.05, armStartS: 0.05, catchS: 0.03 },
  holdS: 0.1,
};

/** More samples lost in a row than this are not bridged. */
const BRIDGED = 4;
const SHOCK_LASTS_S = 0.03;

interface Span {
  readonly fromS: number;
  readonly toS: number;
}

/** Spans of true time, s, in which more than `most` samples in a row are missing. */
function lossesOf(session: SimulatedSession, sensor: 'chest' | 'trailArm', most: number): Span[] {
  const samples = session.samples[sensor];
  const steps = samples.slice(1).map((b, i) => b.trueTimeS - (samples[i]?.trueTimeS ?? 0));
  const usual = median(steps) ?? 0;
  return steps.flatMap((step, i) =>
    Math.round(step / usual) - 1 > most
      ? [{ fromS: samples[i]?.trueTimeS ?? 0, toS: samples[i + 1]?.trueTimeS ?? 0 }]
      : [],
  );
}

const touches = (spans: readonly Span[], fromS: number, toS: number): boolean =>
  spans.some((s) => s.toS > fromS && s.fromS < toS);

const rounded = (v: number): number => Math.round(v * 1e6) / 1e6;

const roundedMeasures = (m: TruthMeasures): TruthMeasures =>
  Object.fromEntries(
    Object.entries(m).map(([k, v]) => [k, typeof v === 'number' ? rounded(v) : v]),
  ) as unknown as TruthMeasures;

function expectedOf(
  r: TruthRepetition,
  losses: { readonly gaps: readonly Span[]; readonly arm: readonly Span[] },
): ExpectedRepetition {
  const rehearsal = r.kind === 'rehearsal' ? r : null;
  const lastS = rehearsal ? (rehearsal.catchS ?? rehearsal.chestOnsetS + 0.4) : r.endS;
  const nullable = (v: number | null | undefined) =>
    v === null || v === undefined ? null : rounded(v);
  return {
    kind: r.kind,
    fault: rehearsal?.fault ?? null,
    startS: rounded(r.startS),
    topS: rounded(r.topS),
    releaseS: nullable(rehearsal?.chestOnsetS),
    armStartS: nullable(rehearsal?.armOnsetS),
    catchS: nullable(rehearsal?.catchS),
    holdS: nullable(rehearsal?.holdS),
    measures: roundedMeasures(r.measures),
    failed: rehearsal ? trulyFailed(r) : null,
    gap: touches(losses.gaps, r.startS, lastS),
    shockLost:
      rehearsal !== null &&
      rehearsal.catchS !== null &&
      touches(losses.arm, rehearsal.catchS, rehearsal.catchS + SHOCK_LASTS_S),
  };
}

/** What an analysis of the recording must find, from the simulator's exact truth alone. */
export function expectedResults(shipped: Shipped, session: SimulatedSession): Expected {
  const { options, about } = shipped;
  const gaps = [
    ...lossesOf(session, 'chest', BRIDGED),
    ...lossesOf(session, 'trailArm', BRIDGED),
  ];
  const losses = { gaps, arm: lossesOf(session, 'trailArm', 0) };
  const all = session.truth.repetitions;
  const count = (kind: TruthRepetition['kind']) => all.filter((r) => r.kind === kind).length;
  return {
    schema: 1,
    about,
    simulated: { seed: options.seed, script: options.script ?? '' },
    hand: session.hand,
    calibrationAccepted: true,
    counts: {
      rehearsal: count('rehearsal'),
      ball: count('ball'),
      practiceSwing: count('practiceSwing'),
    },
    entries: all
      .map((r) => (r.kind === 'rehearsal' ? 'r' : r.kind === 'ball' ? 'b' : ''))
      .join(''),
    repetitions: all.map((r) => expectedOf(r, losses)),
    tolerances: TOLERANCES,
  };
}
