import type { Plan } from '../../coaching/plan.ts';
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

/** The version that is valid now: the newest whose day has come. */
export function validAt(versions: readonly PlanVersion[], nowMs: number): PlanVersion | undefined {
  const begun = versions.filter(({ validFromMs }) => validFromMs <= nowMs);
  return begun.reduce<PlanVersion | undefined>(
    (best, v) =>
      best === undefined ||
      v.validFromMs > best.validFromMs ||
      (v.validFromMs === best.validFromMs && v.number > best.number)
        ? v
        : best,
    undefined,
  );
}

export async function planNow({ db, now }: HubContext, studentId: string): Promise<PlanVersion> {
  const versions = await planVersions(db, studentId);
  const found = validAt(versions, now()) ?? versions.at(-1);
  if (found === undefined) throw new Error('a student without a plan');
  return found;
}

export async function reachedMs(db: Db, planId: string): Promise<number | null> {
  const row = await db
    .selectFrom('plan')
    .select('reachedMs')
    .where('id', '=', planId)
    .executeTakeFirst();
  return row?.reachedMs ?? null;
}
