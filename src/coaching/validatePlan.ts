import { type Bounds, JsonReader, type Problem } from './jsonReader.ts';
import {
  DEFAULT_PLAN,
  type OwnRange,
  type Plan,
  STAGES,
  type Stage,
  TARGET_MEASURES,
  type Target,
  type TargetMeasure,
} from './plan.ts';

export type PlanReading =
  | { readonly plan: Plan; readonly problems?: never }
  | { readonly problems: readonly Problem[]; readonly plan?: never };

/** What a target may be at all: wide, to catch a slip of the pen or of the unit. Choices, not advice. */
const TARGET_BOUNDS: Record<TargetMeasure, Bounds> = {
  holdS: [0, 10],
  chestLeadMs: [-500, 500],
  leanChangeDeg: [-60, 60],
  addedFlexionDeg: [-60, 60],
  keptRotationDeg: [-120, 120],
  turnTowardTargetDeg: [-180, 180],
  releaseToCatchMs: [0, 1000],
};

const OWN_RANGE_BOUNDS: Record<keyof OwnRange, Bounds> = {
  externalRotationDeg: [0, 180],
  flexionDeg: [0, 150],
  lateralTrailDeg: [0, 90],
  lateralLeadDeg: [0, 90],
};

const LIMITS = { name: 80, note: 2000, checklist: 20, checklistItem: 120 } as const;

/**
 * A plan from untrusted JSON. Missing fields take their defaults; unknown keys, wrong types and values
 * out of range are all reported, each with its path, and then there is no plan.
 */
export function validatePlan(value: unknown): PlanReading {
  const read = new JsonReader();
  const plan = readPlan(read, value === undefined ? null : value);
  return read.problems.length > 0 ? { problems: read.problems } : { plan };
}

function readPlan(read: JsonReader, value: unknown): Plan {
  const p = read.object(value, 'plan', Object.keys(DEFAULT_PLAN), true);
  if (p.schema !== undefined && p.schema !== 1) read.refuse('schema', 'schema');
  return {
    schema: 1,
    name: read.text(p.name, 'name', LIMITS.name, DEFAULT_PLAN.name),
    stage: read.oneOf(p.stage, 'stage', Object.keys(STAGES) as Stage[], DEFAULT_PLAN.stage),
    ratio: readRatio(read, p.ratio),
    targets: readTargets(read, p.targets),
    ownRange: readOwnRange(read, p.ownRange),
    volume: readVolume(read, p.volume),
    checklist: readChecklist(read, p.checklist),
    note: read.text(p.note, 'note', LIMITS.note, DEFAULT_PLAN.note),
  };
}

function readRatio(read: JsonReader, value: unknown): Plan['ratio'] {
  const r = read.object(value, 'ratio', ['rehearsals', 'balls']);
  const { ratio } = DEFAULT_PLAN;
  return {
    rehearsals: read.whole(r.rehearsals, 'ratio.rehearsals', [1, 20], ratio.rehearsals),
    balls: read.whole(r.balls, 'ratio.balls', [1, 20], ratio.balls),
  };
}

function readTargets(read: JsonReader, value: unknown): Plan['targets'] {
  const t = read.object(value, 'targets', TARGET_MEASURES);
  const entries = TARGET_MEASURES.map((m) => [m, readTarget(read, t[m], m)] as const);
  return Object.fromEntries(entries) as Record<TargetMeasure, Target | null>;
}

function readTarget(read: JsonReader, value: unknown, measure: TargetMeasure): Target | null {
  if (value === undefined) return DEFAULT_PLAN.targets[measure];
  if (value === null) return null;
  const path = `targets.${measure}`;
  const before = read.problems.length;
  const t = read.object(value, path, ['min', 'max']);
  const target: Target = {
    ...(t.min !== undefined && {
      min: read.number(t.min, `${path}.min`, TARGET_BOUNDS[measure], 0),
    }),
    ...(t.max !== undefined && {
      max: read.number(t.max, `${path}.max`, TARGET_BOUNDS[measure], 0),
    }),
  };
  if (read.problems.length === before) refuseEmptyBand(read, path, target);
  return target;
}

function refuseEmptyBand(read: JsonReader, path: string, { min, max }: Target): void {
  if (min === undefined && max === undefined) read.refuse(path, 'empty-band');
  else if (min !== undefined && max !== undefined && min > max)
    read.refuse(path, 'min-above-max', { min, max });
}

function readOwnRange(read: JsonReader, value: unknown): OwnRange {
  const ends = Object.entries(OWN_RANGE_BOUNDS);
  const r = read.object(value, 'ownRange', Object.keys(OWN_RANGE_BOUNDS));
  return Object.fromEntries(
    ends
      .filter(([key]) => r[key] !== undefined)
      .map(([key, bounds]) => [key, read.number(r[key], `ownRange.${key}`, bounds, 0)]),
  );
}

function readVolume(read: JsonReader, value: unknown): Plan['volume'] {
  const v = read.object(value, 'volume', ['perSession', 'perWeek']);
  const { volume } = DEFAULT_PLAN;
  const perSession = read.whole(v.perSession, 'volume.perSession', [1, 500], volume.perSession);
  const perWeek = read.whole(v.perWeek, 'volume.perWeek', [1, 3500], volume.perWeek);
  if (perSession > perWeek) read.refuse('volume.perWeek', 'week-below-session', { perSession });
  return { perSession, perWeek };
}

function readChecklist(read: JsonReader, value: unknown): readonly string[] {
  const items = read.list(value, 'checklist', LIMITS.checklist);
  if (items === undefined) return DEFAULT_PLAN.checklist;
  return items.map((item, i) =>
    read.text(item ?? null, `checklist[${i}]`, LIMITS.checklistItem, ''),
  );
}
