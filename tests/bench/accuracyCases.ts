import { finish, result, start, step } from '../../src/analysis/analysis.ts';
import type { AnalysisResult, JudgedRepetition } from '../../src/analysis/result.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { streamSession } from '../../src/sensors/sources/synthetic/index.ts';
import type { SimulationOptions } from '../../src/sensors/sources/synthetic/options.ts';
import type {
  TruthDistractor,
  TruthRepetition,
} from '../../src/sensors/sources/synthetic/truth.ts';

/** One simulated session: what truly was in it and what the analysis found. */
export interface Case {
  readonly options: SimulationOptions;
  readonly truth: readonly TruthRepetition[];
  readonly distractors: readonly TruthDistractor[];
  readonly found: AnalysisResult;
}

/** Simulates and analyses, packet by packet as they arrive, without holding the session. */
export function runCase(options: SimulationOptions): Case {
  const hand = options.hand ?? 'right';
  const state = start({ hand, plan: DEFAULT_PLAN });
  const truth: TruthRepetition[] = [];
  const distractors: TruthDistractor[] = [];
  const ignore = (): void => {};
  for (const item of streamSession(options)) {
    if (item.kind === 'event') step(state, { kind: 'event', event: item.event }, ignore);
    else if (item.kind === 'repetition') truth.push(item.repetition);
    else if (item.kind === 'distractor') distractors.push(item.distractor);
    else for (const sample of item.packet.samples) step(state, { kind: 'sample', sample }, ignore);
  }
  finish(state, ignore);
  return { options, truth, distractors, found: result(state, `seed ${options.seed}`) };
}

const MIX =
  'r r b:0.6 r:short-hold r b r:arms-first r p r:losing-lean b:0.9 r r:losing-rotation r b:0.4 r:missed-catch r';
const BETWEEN = 'walk r b r tee r abort r r waggle b r idle r r:arms-first walk r r:missed-catch r';
const NOTHING = 'walk tee abort waggle p idle:20 abort tee p walk abort waggle abort takeoff';

/** Runs of at most four samples, which the analysis bridges; clocks off by more than crystals are. */
const common = (seed: number): SimulationOptions => ({
  seed,
  hand: seed % 2 === 0 ? 'right' : 'left',
  rateHz: [100, 104, { chest: 100, trailArm: 104 }][seed % 3] ?? 100,
  radio: { lostShare: 0.01 },
  skewPpm: { chest: 80 - 32 * (seed % 6), trailArm: -60 + 24 * (seed % 6) },
});

/** Sessions with repetitions: at least the given number of rehearsals, hands in turn. */
export function* mixedSessions(rehearsals: number, firstSeed = 1000): Generator<SimulationOptions> {
  for (let [seed, n] = [firstSeed, 0]; n < rehearsals; seed++) {
    const script = seed % 4 < 2 ? MIX : BETWEEN;
    n += script.split(' ').filter((w) => w.startsWith('r')).length;
    yield { ...common(seed), script };
  }
}

export const distractorSessions = (count: number, firstSeed = 5000): SimulationOptions[] =>
  Array.from({ length: count }, (_, i) => ({ ...common(firstSeed + i), script: NOTHING }));

export interface Match {
  readonly truth: TruthRepetition;
  readonly found: JudgedRepetition | null;
}

/** Pairs each true repetition with the found one whose top is nearest, within a second; each used once. */
export function matchUp(c: Case): { readonly pairs: Match[]; readonly extra: JudgedRepetition[] } {
  const free = new Set(c.found.repetitions);
  const pairs = c.truth.map((truth) => {
    const near = [...free]
      .filter((r) => Math.abs(r.topS - truth.topS) < 1)
      .sort((a, b) => Math.abs(a.topS - truth.topS) - Math.abs(b.topS - truth.topS))[0];
    if (near) free.delete(near);
    return { truth, found: near ?? null };
  });
  return { pairs, extra: [...free] };
}
