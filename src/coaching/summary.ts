import { median } from '../math/stats.ts';
import { isCounted } from './asSaid.ts';
import { carryOver } from './carryOver.ts';
import type { JudgedRehearsal, JudgedRepetition, Ledger, SafetyWarning } from './judgement.ts';
import { type CueCount, type NextStep, nextStep, type PracticeFacts } from './nextStep.ts';
import { askedRatio, type Plan, TARGET_MEASURES, type TargetMeasure } from './plan.ts';
import { checkedOf, poolValues, poolsOf } from './pools.ts';
import { bestRehearsal, typicalRehearsal } from './representative.ts';

/** How one measure went over all rehearsals of its pool. */
interface MeasureSummary {
  readonly measure: TargetMeasure;
  readonly passed: number;
  readonly failed: number;
  readonly notTaken: number;
  readonly median: number | null;
}

/** What a person reads at the end of a practice. */
export interface PracticeSummary extends PracticeFacts {
  readonly rehearsals: number;
  /** In the order of judgement; only what the plan asks for. */
  readonly byMeasure: readonly MeasureSummary[];
  /** `null` where nothing was to change. */
  readonly mostFrequentCue: CueCount | null;
  /** Index of the rehearsal; `null` where none was scored. Rules: BEST_RULE, TYPICAL_RULE. */
  readonly best: number | null;
  readonly typical: number | null;
  readonly next: NextStep;
}

/**
 * @param ledger after corrections, so that the mix is what the person says it was
 * @param warnings all of the session's, standing or not
 */
export function summarise(
  repetitions: readonly JudgedRepetition[],
  ledger: Ledger,
  plan: Plan,
  warnings: readonly SafetyWarning[] = [],
): PracticeSummary {
  const counted = repetitions.filter(isCounted);
  const rehearsals = counted.filter((r): r is JudgedRehearsal => r.kind === 'rehearsal');
  const pools = poolsOf(repetitions);
  const scored = rehearsals.filter((r) => r.verdict.passed !== null);
  const facts: PracticeFacts = {
    scored: scored.length,
    passed: scored.filter((r) => r.verdict.passed).length,
    faults: countFaults(scored),
    mix: { asked: askedRatio(plan), ledger, kept: mixKept(ledger) },
    carryOver: carryOver(pools.rehearsals, pools.balls),
  };
  return {
    ...facts,
    rehearsals: rehearsals.length,
    byMeasure: TARGET_MEASURES.filter((m) => plan.targets[m]).map((m) =>
      measureSummary(m, pools.rehearsals),
    ),
    mostFrequentCue: facts.faults[0] ?? null,
    best: bestRehearsal(scored)?.index ?? null,
    typical: typicalRehearsal(scored)?.index ?? null,
    next: nextStep(facts, warnings),
  };
}

/** Share of balls that came in the mix, 0..1; `null` without balls. */
const mixKept = (l: Ledger): number | null => (l.balls === 0 ? null : l.ballsInMix / l.balls);

/** Most frequent first; where even, the one said first. `stay-easy` names nothing to change. */
function countFaults(scored: readonly JudgedRehearsal[]): readonly CueCount[] {
  const failed = scored.filter((r) => !r.verdict.passed).map((r) => r.verdict.cue);
  const counts = new Map<string, CueCount>();
  for (const cue of failed.filter((c) => c.code !== 'stay-easy'))
    counts.set(cue.code, { cue, count: (counts.get(cue.code)?.count ?? 0) + 1 });
  return [...counts.values()].sort((a, b) => b.count - a.count);
}

function measureSummary(measure: TargetMeasure, pool: readonly JudgedRehearsal[]): MeasureSummary {
  const { scored, passed } = checkedOf(pool, measure);
  return {
    measure,
    passed,
    failed: scored - passed,
    notTaken: pool.length - scored,
    median: median(poolValues(pool, measure)),
  };
}
