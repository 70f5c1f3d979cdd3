import type { HubContext } from '../context.ts';
import { removeSessionFiles, sessionPaths } from '../sessionPaths.ts';
import type { Job, JobAnswer } from './jobMessages.ts';
import { onWork } from './requeue.ts';
import { type AnalysisThread, analysisThread } from './thread.ts';

/** Works off the table `job`, so that it goes on after a restart. */
export interface AnalysisQueue {
  /** Fulfilled when nothing is left to do. */
  idle(): Promise<void>;
  close(): Promise<void>;
}

/** A job that failed so often says so. */
const MOST_TRIES = 3;

interface Waiting {
  readonly sessionId: string;
  readonly studentId: string;
  readonly queuedMs: number;
  readonly tries: number;
  readonly plan: string;
}

/** Starts at once. @param makeThread for tests */
export function analysisQueue(
  context: HubContext,
  { threads = 1, makeThread = analysisThread }: QueueOptions = {},
): AnalysisQueue {
  const taken = new Set<string>();
  const all = Array.from({ length: threads }, makeThread);
  let running: Promise<void> | null = null;
  let again = false;
  let closing = false;
  const work = async (thread: AnalysisThread): Promise<void> => {
    while (!closing) {
      const waiting = await next(context, taken);
      if (waiting === null) return;
      if (taken.has(waiting.sessionId)) continue; // another thread was quicker
      taken.add(waiting.sessionId);
      try {
        await perform(context, thread, waiting, () => closing);
      } finally {
        taken.delete(waiting.sessionId);
      }
    }
  };
  const start = (): void => {
    again = true;
    running ??= (async () => {
      while (again && !closing) {
        again = false;
        await Promise.all(all.map(work)).catch((error: unknown) => complain(context, error));
      }
      running = null;
    })();
  };
  onWork(context, start);
  start();
  return {
    idle: async () => {
      while (running !== null) await running;
    },
    async close() {
      closing = true;
      onWork(context, null);
      await Promise.all(all.map((thread) => thread.close()));
      await running;
    },
  };
}

interface QueueOptions {
  readonly threads?: number;
  readonly makeThread?: () => AnalysisThread;
}

const complain = ({ say }: HubContext, error: unknown): void =>
  say(`The analysis of sessions: ${error instanceof Error ? error.message : String(error)}`);

/** What has never been analysed first, the oldest of it first. */
async function next({ db }: HubContext, taken: ReadonlySet<string>): Promise<Waiting | null> {
  const waiting = await db
    .selectFrom('job')
    .innerJoin('session', 'session.id', 'job.sessionId')
    .select(['job.sessionId', 'job.queuedMs', 'job.tries', 'session.studentId', 'session.plan'])
    .orderBy('session.analysed')
    .orderBy('job.queuedMs')
    .limit(taken.size + 1)
    .execute();
  return waiting.find(({ sessionId }) => !taken.has(sessionId)) ?? null;
}

async function perform(
  context: HubContext,
  thread: AnalysisThread,
  waiting: Waiting,
  closing: () => boolean,
): Promise<void> {
  const { db } = context;
  const { sessionId, tries } = waiting;
  const job = await jobOf(context, waiting);
  // Counted before it is tried: a crash of the whole hub counts too.
  const count = (n: number) =>
    db.updateTable('job').set({ tries: n }).where('sessionId', '=', sessionId).execute();
  await count(tries + 1);
  const answer = closing() ? null : await thread.run(job);
  // It was the end of the hub that ended it.
  if (answer === null || (closing() && !answer.ok)) return void (await count(tries));
  await enter(context, waiting, answer);
  const there = await db
    .selectFrom('session')
    .select('id')
    .where('id', '=', sessionId)
    .executeTakeFirst();
  if (there === undefined) await removeSessionFiles(job.paths);
}

async function jobOf({ db, places }: HubContext, waiting: Waiting): Promise<Job> {
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

async function enter(
  { db }: HubContext,
  { sessionId, queuedMs, tries }: Waiting,
  answer: JobAnswer,
): Promise<void> {
  const over = answer.ok || answer.lasting || tries + 1 >= MOST_TRIES;
  if (!over) return;
  await db.transaction().execute(async (transaction) => {
    await transaction
      .updateTable('session')
      .set(answer.ok ? answer.columns : { problem: problemOf(answer) })
      .where('id', '=', sessionId)
      .execute();
    if (answer.ok) {
      await transaction.deleteFrom('warning').where('sessionId', '=', sessionId).execute();
      const rows = answer.warnings.map((w, position) => ({ sessionId, position, ...w }));
      if (rows.length > 0) await transaction.insertInto('warning').values(rows).execute();
    }
    // Queued again meanwhile: it stays.
    await transaction
      .deleteFrom('job')
      .where('sessionId', '=', sessionId)
      .where('queuedMs', '=', queuedMs)
      .execute();
  });
}

const problemOf = ({ problem, lasting }: Extract<JobAnswer, { ok: false }>): string =>
  lasting ? problem : `The analysis failed ${MOST_TRIES} times. ${problem}`;
