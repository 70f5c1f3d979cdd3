import type { HubContext } from '../context.ts';

/** Who works off the jobs of a hub that runs; registered while it does. */
const workers = new WeakMap<HubContext, () => void>();

export function onWork(context: HubContext, start: (() => void) | null): void {
  if (start === null) workers.delete(context);
  else workers.set(context, start);
}

/** There are new jobs. Where nobody works yet, they wait for whoever will. */
export const wake = (context: HubContext): void => workers.get(context)?.();

const ALIVE = { tries: 0, problem: null, failedMs: null, deadIn: null };

/** Analyses a session again, as after a relabel; one that is being analysed now comes once more. */
export async function requeue(context: HubContext, sessionId: string): Promise<void> {
  const { db, now } = context;
  await db.transaction().execute(async (transaction) => {
    const there = await transaction
      .selectFrom('job')
      .select('queuedMs')
      .where('sessionId', '=', sessionId)
      .executeTakeFirst();
    const queuedMs = Math.max(now(), (there?.queuedMs ?? 0) + 1);
    const job = { ...ALIVE, queuedMs };
    await transaction
      .insertInto('job')
      .values({ sessionId, ...job })
      .onConflict((c) => c.column('sessionId').doUpdateSet(job))
      .execute();
    await transaction
      .updateTable('session')
      .set({ problem: null })
      .where('id', '=', sessionId)
      .execute();
  });
  wake(context);
}

/** Queues every session that was analysed, or given up, by another version; returns how many. */
export async function reanalyseAll(context: HubContext, version: string): Promise<number> {
  const { db } = context;
  const old = await db
    .selectFrom('session')
    .leftJoin('job', 'job.sessionId', 'session.id')
    .select('session.id as sessionId')
    .where((e) =>
      e.or([
        e.and([e('session.version', '!=', version), e('job.sessionId', 'is', null)]),
        e('job.deadIn', '!=', version),
      ]),
    )
    .execute();
  for (const { sessionId } of old) await requeue(context, sessionId);
  return old.length;
}
