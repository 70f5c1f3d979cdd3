import { openPain } from './concerns.ts';
import { FAULT_CUES } from './cues.ts';
import type { CueCode } from './judgement.ts';
import { ADVICE_FEWEST } from './nextStep.ts';
import {
  type Plan,
  STAGES,
  type Stage,
  TARGET_MEASURES,
  type Target,
  type TargetMeasure,
} from './plan.ts';
import type { Spread } from './pools.ts';

/** One counted session. */
export interface SessionRecord {
  /** Epoch ms. */
  readonly startedMs: number;
  readonly plan: Pick<Plan, 'stage'>;
  readonly rehearsals: Partial<Readonly<Record<TargetMeasure, Spread>>>;
  readonly warnings: number;
  /** 0-10, `null` where it was not asked. */
  readonly painBefore: number | null;
  readonly painAfter: number | null;
}

/**
 * What may come next. `target`: the next target of the same stage. `stage`: the plan's next stage. `done`: the plan has
 * no further stage. `met` targets were met in each of the newest sessions, of `asked`.
 */
export type Proposal = {
  readonly met: readonly TargetMeasure[];
  readonly asked: number;
} & (
  | { readonly kind: 'target'; readonly next: TargetMeasure; readonly target: Target }
  | { readonly kind: 'stage'; readonly stage: Stage }
  | { readonly kind: 'done' }
);

/** So many sessions in a row. A choice. */
export const IN_A_ROW = 3;

/** Three of four rehearsals or more reached the target, of at least `ADVICE_FEWEST`. Choices. */
export function isMet(spread: Spread | undefined, { min, max }: Target): boolean {
  if (spread === undefined || spread.count < ADVICE_FEWEST) return false;
  return spread.low >= (min ?? -Infinity) && spread.high <= (max ?? Infinity);
}

/**
 * Something that comes before any next step: pain that no later session is free of, or a warning in one of the newest
 * sessions. @param newestFirst all counted sessions
 */
export function concernStands(newestFirst: readonly SessionRecord[]): boolean {
  if (newestFirst.slice(0, IN_A_ROW).some(({ warnings }) => warnings > 0)) return true;
  const signs = newestFirst.map(({ startedMs, painBefore, painAfter }) => ({
    sessionId: String(startedMs),
    startedMs,
    receivedMs: startedMs,
    reviewed: false,
    underPlan: true,
    painBefore,
    painAfter,
    warnings: [],
  }));
  return openPain(signs, { painFreeMs: null, reviewedMs: null }, []) !== null;
}

const ORDER = Object.keys(STAGES) as Stage[];

/**
 * The next step, where a target was met in three sessions in a row in the plan's stage; `null` where none was, and
 * while a concern stands. Nothing is changed by it.
 * @param newestFirst all counted sessions
 * @param fault code of the commonest cue of the newest session: what is worked on now comes first
 */
export function proposal(
  plan: Pick<Plan, 'stage' | 'targets'>,
  newestFirst: readonly SessionRecord[],
  fault: CueCode | null = null,
): Proposal | null {
  const newest = newestFirst.slice(0, IN_A_ROW);
  if (newest.length < IN_A_ROW || newest.some((s) => s.plan.stage !== plan.stage)) return null;
  if (concernStands(newestFirst)) return null;
  const asked = TARGET_MEASURES.filter((measure) => plan.targets[measure] !== null);
  const metIn = (measure: TargetMeasure): boolean => {
    const target = plan.targets[measure];
    return target !== null && newest.every((s) => isMet(s.rehearsals[measure], target));
  };
  const met = asked.filter(metIn);
  if (met.length === 0) return null;
  const found = { met, asked: asked.length };
  const open = asked.filter((measure) => !metIn(measure));
  const next = open.find((measure) => saidBy(measure, fault)) ?? open[0];
  const target = next === undefined ? null : plan.targets[next];
  if (next !== undefined && target !== null) return { ...found, kind: 'target', next, target };
  const stage = ORDER[ORDER.indexOf(plan.stage) + 1];
  return stage === undefined ? { ...found, kind: 'done' } : { ...found, kind: 'stage', stage };
}

/** The cue is what is said where this measure's target is not reached. */
const saidBy = (measure: TargetMeasure, fault: CueCode | null): boolean =>
  Object.values(FAULT_CUES[measure]).some(({ code }) => code === fault);
