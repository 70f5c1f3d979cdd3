import { DEFAULT_PLAN, type Plan } from '../../coaching/plan.ts';
import { planChanges } from '../../coaching/planChanges.ts';
import type { PlanVersion } from '../../streaming/hubContract/students.ts';
import type { HubContext } from '../context.ts';
import type { Db } from '../db/open.ts';

/** All versions of a student, newest first, each with what it changed. */
export async function planVersions(db: Db, studentId: string): Promise<readonly PlanVersion[]> {
  const rows = await db
    .selectFrom('plan')
    .leftJoin('person', 'person.id', 'plan.byId')
    .select([
      'plan.id',
      'plan.number',
      'plan.plan',
      'plan.validFromMs',
      'plan.createdMs',
      'person.name as by',
    ])
    .where('plan.studentId', '=', studentId)
    .orderBy('plan.number')
    .execute();
  const plans = rows.map(({ plan }) => JSON.parse(plan) as Plan);
  return rows
    .map((row, i) => ({
      ...row,
      by: row.by ?? '',
      plan: plans[i]!,
      changes: i === 0 ? [] : planChanges(plans[i - 1]!, plans[i]!),
    }))
    .reverse();
}

/** Of a student for whom no coach has set a plan: what every machine starts with. */
const STANDARD: PlanVersion = {
  id: '',
  number: 0,
  plan: DEFAULT_PLAN,
  validFromMs: 0,
  createdMs: 0,
  by: '',
  changes: [],
};

/** The version that was made last of those whose day has come, as the student's machine takes it. */
export async function planNow({ db, now }: HubContext, studentId: string): Promise<PlanVersion> {
  const versions = await planVersions(db, studentId);
  return versions.find((v) => v.validFromMs <= now()) ?? versions.at(-1) ?? STANDARD;
}

export async function reachedMs(db: Db, planId: string): Promise<number | null> {
  const row = await db
    .selectFrom('plan')
    .select('reachedMs')
    .where('id', '=', planId)
    .executeTakeFirst();
  return row?.reachedMs ?? null;
}
