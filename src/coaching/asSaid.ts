import type { JudgedRepetition } from './judgement.ts';
import type { CorrectedKind, RepetitionKind } from './ledger.ts';

/**
 * A repetition as a person says that it was: measured between the instants of that kind, judged if it is a rehearsal.
 * @param others the same movement, measured as the other kinds
 */
export function asSaid(
  detected: JudgedRepetition,
  others: readonly JudgedRepetition[],
  said: CorrectedKind | null,
): JudgedRepetition {
  if (said === null || said === detected.kind) return detected;
  const reading = others.find((o) => o.kind === said);
  const { flags, ...rest } = reading ?? detected;
  const marked = { detected: detected.kind, ignored: reading === undefined };
  return { ...rest, flags: [...flags, 'marked-by-hand'], marked } as JudgedRepetition;
}

/** Its numbers count: nobody said that it was nothing. */
export const isCounted = ({ marked }: Pick<JudgedRepetition, 'marked'>): boolean =>
  marked?.ignored !== true;

/** The kind before anybody said another. */
export const detectedKind = ({ kind, marked }: JudgedRepetition): RepetitionKind =>
  marked?.detected ?? kind;
