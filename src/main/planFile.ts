import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import Type from 'typebox';
import Compile from 'typebox/compile';
import type { Plan } from '../coaching/plan.ts';
import { planOf } from '../sessions/planFile.ts';
import type { PlanService } from '../streaming/planApi.ts';
import type { OwnPlan } from '../streaming/planContract.ts';

const validator = Compile(
  Type.Object({
    schema: Type.Literal(1),
    versions: Type.Array(
      Type.Object({
        number: Type.Integer({ minimum: 1 }),
        madeMs: Type.Number({ minimum: 0 }),
        plan: Type.Unknown(),
      }),
    ),
  }),
);

/** Every version of the plan that the student wrote. */
export interface PlanStore {
  /** Oldest first. */
  own(): readonly OwnPlan[];
  /** @throws Error in words where it cannot be written; the former versions then stand. */
  write(plan: Plan): void;
}

/**
 * One JSON file, replaced as a whole.
 * @param date ms since 1970, UTC
 * @throws Error in words where the file is there and cannot be understood: nothing is overwritten then.
 */
export function planFile(path: string, date: () => number): PlanStore {
  let versions = load(path);
  return {
    own: () => versions,
    write: (plan) => {
      const number = (versions.at(-1)?.number ?? 0) + 1;
      const next = [...versions, { number, madeMs: date(), plan }];
      mkdirSync(dirname(path), { recursive: true });
      writeFileSync(`${path}.new`, `${JSON.stringify({ schema: 1, versions: next }, null, 2)}\n`);
      renameSync(`${path}.new`, path);
      versions = next;
    },
  };
}

/** What the page asks and changes. `coach`: the plan that a coach set, where there is one. */
export const planService = (of: {
  readonly file: PlanStore;
  readonly coach?: () => Plan | null;
  readonly week: PlanService['week'];
}): PlanService => ({
  coach: () => of.coach?.() ?? null,
  own: () => of.file.own(),
  write: (plan) => of.file.write(plan),
  week: of.week,
});

const codeOf = (error: unknown): unknown =>
  error instanceof Error && 'code' in error ? error.code : undefined;

function load(path: string): readonly OwnPlan[] {
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return [];
    throw new Error(`${path} cannot be read: ${String(error)}`);
  }
  try {
    return versionsOf(JSON.parse(text), path);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new Error(`${path} is damaged (${why}). Move it away or mend it, then start again.`);
  }
}

function versionsOf(value: unknown, path: string): readonly OwnPlan[] {
  if (!validator.Check(value)) {
    const [first] = validator.Errors(value);
    throw new Error(`${first?.instancePath ?? ''} ${first?.message ?? 'wrong content'}`.trim());
  }
  return value.versions.map((v) => ({ ...v, plan: planOf(v.plan, path) }));
}
