import type { HubContext } from '../context.ts';

/** Who works off the jobs of a hub that runs; registered while it does. */
const workers = new WeakMap<HubContext, () => void>();

export function onWork(context: HubContext, start: (() => void) | null): void {
  if (start === null) workers.delete(context);
  else workers.set(context, start);
}

/** There are new jobs. Where nobody works yet, they wait for whoever will. */
export const wake = (context: HubContext): void => workers.get(context)?.();

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
    await transaction
      .insertInto('job')
      .values({ sessionId, queuedMs, tries: 0 })
      .onConflict((c) => c.column('sessionId').doUpdateSet({ queuedMs, tries: 0 }))
      .execute();
  });
  wake(context);
}

/** Queues every session that was analysed by another version; returns how many. */
export async function reanalyseAll(context: HubContext, version: string): Promise<number> {
  const { db, now } = context;
  const old = await db
    .selectFrom('session')
    .select('id as sessionId')
    .where('version', 'is not', null)
    .where('version', '!=', version)
    .execute();
  for (const { sessionId } of old)
    await db
      .insertInto('job')
      .values({ sessionId, queuedMs: now(), tries: 0 })
      .onConflict((c) => c.column('sessionId').doNothing())
      .execute();
  if (old.length > 0) wake(context);
  return old.length;
}
