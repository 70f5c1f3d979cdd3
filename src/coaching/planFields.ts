import {
  OWN_RANGE_KEYS,
  type OwnRange,
  type Plan,
  TARGET_MEASURES,
  type TargetMeasure,
} from './plan.ts';

/** What of a plan is changed as a whole: two people who change different fields do not disagree. */
export type PlanField =
  | 'name'
  | 'stage'
  | 'mix'
  | 'perSession'
  | 'perWeek'
  | 'checklist'
  | 'note'
  | TargetMeasure
  | keyof OwnRange;

/** In the order of reading. */
export const PLAN_FIELDS: readonly PlanField[] = [
  'name',
  'stage',
  'mix',
  ...TARGET_MEASURES,
  'perSession',
  'perWeek',
  ...OWN_RANGE_KEYS,
  'checklist',
  'note',
];

const isTarget = (field: PlanField): field is TargetMeasure =>
  (TARGET_MEASURES as readonly PlanField[]).includes(field);
const isRange = (field: PlanField): field is keyof OwnRange =>
  (OWN_RANGE_KEYS as readonly PlanField[]).includes(field);

function valueOf(plan: Plan, field: PlanField): unknown {
  if (isTarget(field)) return [plan.targets[field]?.min, plan.targets[field]?.max];
  if (isRange(field)) return plan.ownRange[field];
  if (field === 'mix') return [plan.ratio.rehearsals, plan.ratio.balls];
  if (field === 'perSession' || field === 'perWeek') return plan.volume[field];
  return plan[field];
}

const same = (a: Plan, b: Plan, field: PlanField): boolean =>
  JSON.stringify(valueOf(a, field)) === JSON.stringify(valueOf(b, field));

/** `plan` with one field as `from` has it. */
function withField(plan: Plan, from: Plan, field: PlanField): Plan {
  if (isTarget(field))
    return { ...plan, targets: { ...plan.targets, [field]: from.targets[field] } };
  if (isRange(field)) {
    const entries = Object.entries({ ...plan.ownRange, [field]: from.ownRange[field] });
    return {
      ...plan,
      ownRange: Object.fromEntries(entries.filter(([, deg]) => deg !== undefined)),
    };
  }
  if (field === 'mix') return { ...plan, ratio: from.ratio };
  if (field === 'perSession' || field === 'perWeek')
    return { ...plan, volume: { ...plan.volume, [field]: from.volume[field] } };
  return { ...plan, [field]: from[field] };
}

/** A field that at least one of two people changed in what both began with. */
export interface ChangedField {
  readonly field: PlanField;
  readonly byThem: boolean;
  readonly byMe: boolean;
}

/** Every field that `theirs` or `mine` changed in `base` and that now differs between them, in the order of reading. */
export const changedFields = (base: Plan, theirs: Plan, mine: Plan): readonly ChangedField[] =>
  PLAN_FIELDS.filter((field) => !same(theirs, mine, field)).map((field) => ({
    field,
    byThem: !same(base, theirs, field),
    byMe: !same(base, mine, field),
  }));

/** `theirs` with the fields of `mine` that are named. */
export const mergePlans = (theirs: Plan, mine: Plan, fields: readonly PlanField[]): Plan =>
  fields.reduce((plan, field) => withField(plan, mine, field), theirs);
