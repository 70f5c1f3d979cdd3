import type { Problem } from '../../coaching/jsonReader.ts';
import {
  DEFAULT_PLAN,
  OWN_RANGE_KEYS,
  type OwnRange,
  type Plan,
  STAGES,
  type Stage,
  TARGET_MEASURES,
  type TargetMeasure,
} from '../../coaching/plan.ts';
import { validatePlan } from '../../coaching/validatePlan.ts';

/** A plan while it is written: numbers as they are typed, empty for none. */
export interface PlanDraft {
  readonly name: string;
  readonly stage: Stage;
  readonly rehearsals: string;
  readonly balls: string;
  readonly targets: Readonly<Record<TargetMeasure, { readonly min: string; readonly max: string }>>;
  readonly ownRange: Readonly<Record<keyof OwnRange, string>>;
  readonly perSession: string;
  readonly perWeek: string;
  /** One item a line. */
  readonly checklist: string;
  readonly note: string;
}

const text = (value: number | undefined): string => (value === undefined ? '' : String(value));

export function draftOf(plan: Plan): PlanDraft {
  const targets = TARGET_MEASURES.map((m) => {
    const target = plan.targets[m];
    return [m, { min: text(target?.min), max: text(target?.max) }] as const;
  });
  return {
    name: plan.name,
    stage: plan.stage,
    rehearsals: String(plan.ratio.rehearsals),
    balls: String(plan.ratio.balls),
    targets: Object.fromEntries(targets) as PlanDraft['targets'],
    ownRange: Object.fromEntries(
      OWN_RANGE_KEYS.map((key) => [key, text(plan.ownRange[key])]),
    ) as PlanDraft['ownRange'],
    perSession: String(plan.volume.perSession),
    perWeek: String(plan.volume.perWeek),
    checklist: plan.checklist.join('\n'),
    note: plan.note,
  };
}

/** What was typed as a number, a comma for a point too; else the text, for the reader to refuse. */
function numberIn(typed: string): number | string {
  const plain = typed.trim().replace(',', '.').replace('−', '-');
  return /^-?\d+(\.\d+)?$/.test(plain) ? Number(plain) : typed.trim();
}

function targetIn({ min, max }: PlanDraft['targets'][TargetMeasure]): unknown {
  if (min.trim() === '' && max.trim() === '') return null;
  return {
    ...(min.trim() !== '' && { min: numberIn(min) }),
    ...(max.trim() !== '' && { max: numberIn(max) }),
  };
}

const lines = (typed: string): string[] =>
  typed
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');

/** The plan that was written, or what is wrong with it, by path. */
export function readDraft(draft: PlanDraft): {
  readonly plan: Plan | null;
  readonly problems: readonly Problem[];
} {
  const { plan, problems } = validatePlan({
    schema: 1,
    name: draft.name.trim(),
    stage: draft.stage,
    ratio: { rehearsals: numberIn(draft.rehearsals), balls: numberIn(draft.balls) },
    targets: Object.fromEntries(TARGET_MEASURES.map((m) => [m, targetIn(draft.targets[m])])),
    ownRange: Object.fromEntries(
      OWN_RANGE_KEYS.filter((key) => draft.ownRange[key].trim() !== '').map((key) => [
        key,
        numberIn(draft.ownRange[key]),
      ]),
    ),
    volume: { perSession: numberIn(draft.perSession), perWeek: numberIn(draft.perWeek) },
    checklist: lines(draft.checklist),
    note: draft.note.trim(),
  });
  return { plan: plan ?? null, problems: problems ?? [] };
}

/** The same names and kinds of values as in `like`. */
function isLike(value: unknown, like: unknown): boolean {
  if (typeof like !== 'object' || like === null) return typeof value === typeof like;
  if (typeof value !== 'object' || value === null) return false;
  const names = Object.keys(like);
  return (
    Object.keys(value).length === names.length &&
    Object.entries(like).every(([name, own]) =>
      isLike((value as Record<string, unknown>)[name], own),
    )
  );
}

/** A draft that was kept in the browser; `null` where this version writes others. */
export const keptDraft = (kept: unknown): PlanDraft | null =>
  isLike(kept, draftOf(DEFAULT_PLAN)) && (kept as PlanDraft).stage in STAGES
    ? (kept as PlanDraft)
    : null;
