import type { JudgedRepetition } from '../../coaching/judgement.ts';
import type { CorrectedKind } from '../../coaching/ledger.ts';
import { type Mark, markOf } from '../practice/kind.ts';

/** Kinds and verdicts that the filter knows: one for each shape on the strip. */
export const SHOWN_MARKS = [
  'passed',
  'notPassed',
  'notScored',
  'ball',
  'practiceSwing',
  'ignored',
] as const satisfies readonly Mark[];

/** What is chosen on a session's page; it stands in the address, so that a link shows the same. */
export interface ReviewView {
  /** Marks that are shown; empty means all. */
  readonly marks: readonly Mark[];
  /** Index of the repetition that is open; `null` for the overview. */
  readonly open: number | null;
  /** Index of the one it is compared with. */
  readonly beside: number | null;
}

export const WHOLE_SESSION: ReviewView = { marks: [], open: null, beside: null };

/** Reads a query as `writeView` writes it; anything else in it is left out. */
export function readView(query: string): ReviewView {
  const asked = new URLSearchParams(query);
  const marks = asked.get('show')?.split(',') ?? [];
  const open = indexIn(asked.get('repetition'));
  return {
    marks: SHOWN_MARKS.filter((mark) => marks.includes(mark)),
    open,
    beside: open === null ? null : indexIn(asked.get('beside')),
  };
}

const indexIn = (text: string | null): number | null =>
  text !== null && /^[1-9]\d{0,5}$/.test(text) ? Number(text) : null;

/** The query (without `?`) that stands for a view; empty for the whole session. */
export function writeView({ marks, open, beside }: ReviewView): string {
  return [
    ...(marks.length === 0 ? [] : [`show=${marks.join(',')}`]),
    ...(open === null ? [] : [`repetition=${open}`]),
    ...(open === null || beside === null ? [] : [`beside=${beside}`]),
  ].join('&');
}

/** Kinds that were set by hand, by repetition index; the measured ones stay visible. */
export type Corrections = ReadonlyMap<number, CorrectedKind>;

export const NOT_CORRECTED: Corrections = new Map();

/** What a person said of the repetitions where it was no repetition's own kind; read off the result itself. */
export const correctionsIn = (repetitions: readonly JudgedRepetition[]): Corrections =>
  new Map(
    repetitions.flatMap((r) =>
      r.marked === undefined ? [] : [[r.index, r.marked.ignored ? 'ignored' : r.kind]],
    ),
  );

/** The shape of a repetition: as measured, or as it was set by hand. */
export function markOfRepetition(
  r: JudgedRepetition,
  corrected: Corrections = NOT_CORRECTED,
): Mark {
  const passed = r.kind === 'rehearsal' ? r.verdict.passed : null;
  return markOf({ kind: corrected.get(r.index) ?? r.kind, passed });
}

/** The repetitions that the filter lets through, in order. */
export const shownOf = (
  repetitions: readonly JudgedRepetition[],
  view: Pick<ReviewView, 'marks'>,
  corrected: Corrections = NOT_CORRECTED,
): readonly JudgedRepetition[] =>
  view.marks.length === 0
    ? repetitions
    : repetitions.filter((r) => view.marks.includes(markOfRepetition(r, corrected)));

/** The shown repetition `step` places on from the one with index `from`; `null` at either end. */
export function neighbour(
  shown: readonly JudgedRepetition[],
  from: number,
  step: 1 | -1,
): number | null {
  const onward = shown.filter((r) => (step > 0 ? r.index > from : r.index < from));
  return (step > 0 ? onward[0] : onward.at(-1))?.index ?? null;
}
