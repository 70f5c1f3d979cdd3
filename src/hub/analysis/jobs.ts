import { inPieces } from '../../sessions/store/rows.ts';
import { fill } from '../../sensors/sentence.ts';
import { VERSION } from '../../sessions/version.ts';
import { API_TEXTS } from '../../streaming/apiTexts.ts';
import type { HubContext } from '../context.ts';
import type { Db } from '../db/open.ts';
import { sessionPaths } from '../sessionPaths.ts';
import type { Job, JobAnswer, JobFailure } from './jobMessages.ts';

/** A job that failed so often waits until somebody starts it again. */
export const MOST_TRIES = 3;

/** A job whose turn it is. */
export interface Waiting {
  readonly sessionId: string;
  readonly studentId: string;
  readonly queuedMs: number;
  readonly tries: number;
  readonly plan: string;
}

/**
 * What has failed least often first, then what has never been analysed, the oldest of it first.
 * @param busy what others work on
 * @param aside what has its turn only where nothing else waits
 */
export async function nextJob(
  { db }: HubContext,
  busy: ReadonlySet<string>,
  aside: ReadonlyMap<string, number>,
): Promise<Waiting | null> {
  const waiting = await db
    .selectFrom('job')
    .innerJoin('session', 'session.id', 'job.sessionId')
    .select(['job.sessionId', 'job.queuedMs', 'job.tries', 'session.studentId', 'session.plan'])
    .where('job.deadIn', 'is', null)
    .orderBy('job.tries')
    .orderBy('session.analysed')
    .orderBy('job.queuedMs')
    .limit(busy.size + aside.size + 1)
    .execute();
  const free = waiting.filter(({ sessionId }) => !busy.has(sessionId));
  return free.find(({ sessionId }) => !aside.has(sessionId)) ?? free[0] ?? null;
}

export async function jobOf({ db, places }: HubContext, waiting: Waiting): Promise<Job> {
  const { sessionId, studentId, plan } = waiting;
  const labels = await db
    .selectFrom('relabel')
    .select(['atS as topS', 'kind'])
    .where('sessionId', '=', sessionId)
    .orderBy('repIndex')
    .execute();
  return {
    sessionId,
    paths: sessionPaths(places, studentId, sessionId),
    plan: JSON.parse(plan) as Job['plan'],
    labels,
  };
}

/** Of this very job: one that was queued again meanwhile stays as it is. */
export async function setTries(
  { db }: HubContext,
  { sessionId, queuedMs }: Waiting,
  tries: number,
): Promise<void> {
  await db
    .updateTable('job')
    .set({ tries })
    .where('sessionId', '=', sessionId)
    .where('queuedMs', '=', queuedMs)
    .execute();
}

/** Enters what was found; the job is over, unless it was queued again meanwhile. */
export const enterFound = (
  { db }: HubContext,
  waiting: Waiting,
  { columns, warnings }: Extract<JobAnswer, { ok: true }>,
): Promise<void> =>
  db.transaction().execute(async (transaction) => {
    const { sessionId } = waiting;
    await transaction.updateTable('session').set(columns).where('id', '=', sessionId).execute();
    await transaction.deleteFrom('warning').where('sessionId', '=', sessionId).execute();
    const rows = warnings.map((w, position) => ({ sessionId, position, ...w }));
    for (const piece of inPieces(rows))
      await transaction.insertInto('warning').values(piece).execute();
    await endJob(transaction, waiting);
  });

async function endJob(db: Db, { sessionId, queuedMs }: Waiting): Promise<void> {
  await db
    .deleteFrom('job')
    .where('sessionId', '=', sessionId)
    .where('queuedMs', '=', queuedMs)
    .execute();
}

/**
 * Enters a failure: where the recording is why, its session says so and the job is over; the last of the tries makes
 * the job a dead one, which waits until somebody starts it again; before that it is tried again.
 */
export const enterFailure = (
  { db, now }: HubContext,
  waiting: Waiting,
  { problem, lasting }: JobFailure,
): Promise<void> =>
  db.transaction().execute(async (transaction) => {
    const { sessionId, queuedMs, tries } = waiting;
    const dead = !lasting && tries + 1 >= MOST_TRIES;
    const text = lasting
      ? problem
      : fill(API_TEXTS['analysis-failed'], { times: MOST_TRIES, why: problem });
    if (lasting || dead)
      await transaction
        .updateTable('session')
        .set({ problem: text })
        .where('id', '=', sessionId)
        .execute();
    if (lasting) return endJob(transaction, waiting);
    await transaction
      .updateTable('job')
      .set({ problem, failedMs: now(), deadIn: dead ? VERSION : null })
      .where('sessionId', '=', sessionId)
      .where('queuedMs', '=', queuedMs)
      .execute();
  });
