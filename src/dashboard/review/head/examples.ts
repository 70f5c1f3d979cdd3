import type { JudgedRehearsal, JudgedRepetition } from '../../../coaching/judgement.ts';
import {
  bestRehearsal,
  typicalRehearsal,
  worstRehearsal,
} from '../../../coaching/representative.ts';
import { t } from '../../strings/strings.ts';
import { type Corrections, NOT_CORRECTED } from '../view.ts';

export type ExampleName = 'typical' | 'best' | 'worst';

export interface Example {
  readonly name: ExampleName;
  readonly index: number;
  readonly rule: string;
}

/** Fewer scored rehearsals than this stand for nothing but themselves. A choice. */
const FEWEST = 3;

/** Typical, best and worst scored rehearsal by their rules; empty where there are too few. */
export function examplesOf(
  repetitions: readonly JudgedRepetition[],
  corrected: Corrections = NOT_CORRECTED,
): readonly Example[] {
  const scored = repetitions.filter(
    (r): r is JudgedRehearsal =>
      r.kind === 'rehearsal' &&
      r.verdict.passed !== null &&
      (corrected.get(r.index) ?? r.kind) === 'rehearsal',
  );
  if (scored.length < FEWEST) return [];
  const chosen = [
    ['typical', typicalRehearsal(scored), t.names.rules.typical],
    ['best', bestRehearsal(scored), t.names.rules.best],
    ['worst', worstRehearsal(scored), t.names.rules.worst],
  ] as const;
  return chosen.flatMap(([name, r, rule]) => (r === null ? [] : [{ name, index: r.index, rule }]));
}
