import type { StripEntry } from '../../streaming/contract.ts';

/** What a repetition is drawn as: a shape that needs no colour. */
export type Mark = 'passed' | 'notPassed' | 'notScored' | 'ball' | 'practiceSwing' | 'ignored';

export function markOf({ kind, passed }: Pick<StripEntry, 'kind' | 'passed'>): Mark {
  if (kind !== 'rehearsal') return kind;
  if (passed === null) return 'notScored';
  return passed ? 'passed' : 'notPassed';
}
