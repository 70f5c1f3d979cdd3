import type { TargetMeasure } from '../../src/coaching/plan.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import type { TruthRepetition } from '../../src/sensors/sources/synthetic/truth.ts';
import type { Case, Match } from './accuracyCases.ts';

/** Measures of the default plan that a rehearsal truly misses. */
export function trulyFailed(r: TruthRepetition): TargetMeasure[] {
  if (r.kind !== 'rehearsal') return [];
  const values = { ...r.measures, holdS: r.holdS };
  return (Object.keys(DEFAULT_PLAN.targets) as TargetMeasure[]).filter((name) => {
    const value = values[name];
    const { min = -Infinity, max = Infinity } = DEFAULT_PLAN.targets[name] ?? {};
    return value === null || value < min || value > max;
  });
}

export interface VerdictScore {
  readonly judged: number;
  /** The same measures failed as in truth. */
  readonly right: number;
  readonly notScored: number;
  readonly catches: number;
  readonly catchesSeen: number;
  readonly missed: number;
  readonly catchesInvented: number;
  readonly wrong: readonly string[];
}

export function verdictScore(
  cases: readonly { readonly c: Case; readonly pairs: readonly Match[] }[],
): VerdictScore {
  const wrong: string[] = [];
  const n = { judged: 0, right: 0, notScored: 0, catches: 0, catchesSeen: 0 };
  const missed = { missed: 0, catchesInvented: 0 };
  for (const { c, pairs } of cases) {
    for (const { truth, found } of pairs) {
      if (truth.kind !== 'rehearsal' || found?.kind !== 'rehearsal') continue;
      if (truth.catchS === null) {
        missed.missed++;
        if (found.catchS !== null) missed.catchesInvented++;
      } else {
        n.catches++;
        if (found.catchS !== null) n.catchesSeen++;
      }
      if (found.verdict.passed === null) {
        n.notScored++;
        continue;
      }
      n.judged++;
      const failed = found.verdict.checks.filter((k) => k.passed === false).map((k) => k.measure);
      const expected = trulyFailed(truth);
      if ([...failed].sort().join() === [...expected].sort().join()) n.right++;
      else {
        wrong.push(
          `seed ${c.options.seed} ${c.options.hand} at ${truth.topS.toFixed(2)} s, ${truth.fault ?? 'good'}: truly failed [${expected.join(' ')}], found [${failed.join(' ')}]`,
        );
      }
    }
  }
  return { ...n, ...missed, wrong };
}
