import { API_TEXTS } from '../../streaming/apiTexts.ts';
import type { HubContext } from '../context.ts';
import { removeSessionFiles, sessionPaths } from '../sessionPaths.ts';
import { failureOf } from './failure.ts';
import type { JobAnswer } from './jobMessages.ts';
import {
  MOST_TRIES,
  type Waiting,
  enterFailure,
  enterFound,
  jobOf,
  nextJob,
  setTries,
} from './jobs.ts';
import { onWork } from './requeue.ts';
import { type AnalysisThread, analysisThread } from './thread.ts';

/** Works off the table `job`, so that it goes on after a restart. */
export interface AnalysisQueue {
  /** Fulfilled when nothing is left to do. */
  idle(): Promise<void>;
  close(): Promise<void>;
}

interface QueueOptions {
  readonly threads?: number;
  readonly makeThread?: () => AnalysisThread;
  /** How long a full disk is left alone, ms. */
  readonly roomMs?: number;
}

/** A full disk is tried again after so long, ms. A choice. */
const ROOM_MS = 30_000;

/** Starts at once. @param makeThread for tests */
export function analysisQueue(
  context: HubContext,
  { threads = 1, makeThread = analysisThread, roomMs = ROOM_MS }: QueueOptions = {},
): AnalysisQueue {
  const all = Array.from({ length: threads }, makeThread);
  const end = new AbortController();
  const floor: Floor = { context, busy: new Set(), aside: new Map(), roomMs, ended: end.signal };
  let running: Promise<void> | null = null;
  let again = false;
  const start = (): void => {
    again = true;
    running ??= (async () => {
      while (again && !end.signal.aborted) {
        again = false;
        await Promise.all(all.map((thread) => work(floor, thread)));
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
      end.abort();
      onWork(context, null);
      await Promise.all(all.map((thread) => thread.close()));
      await running;
    },
  };
}

/** What those who work share. */
interface Floor {
  readonly context: HubContext;
  /** Sessions that are being analysed. */
  readonly busy: Set<string>;
  /** Sessions for which there was no room on the disk, with the tries that they had before. */
  readonly aside: Map<string, number>;
  readonly roomMs: number;
  readonly ended: AbortSignal;
}

/** One job after the other until none is left. Whatever goes wrong with one, the others have their turn. */
async function work(floor: Floor, thread: AnalysisThread): Promise<void> {
  const { context, busy, aside, ended } = floor;
  while (!ended.aborted) {
    const waiting = await nextJob(context, busy, aside).catch((error: unknown) => {
      complain(context, error);
      return 'later' as const;
    });
    if (waiting === null) return;
    if (waiting === 'later') await pause(floor);
    else if (!busy.has(waiting.sessionId)) await perform(floor, thread, waiting); // no other was quicker
  }
}

const complain = ({ say }: HubContext, error: unknown): void =>
  say(`The analysis of sessions: ${error instanceof Error ? error.message : String(error)}`);

/** Until there may be room again, or the end. */
const pause = ({ roomMs, ended }: Floor): Promise<void> =>
  new Promise((resolve) => {
    const over = (): void => {
      clearTimeout(timer);
      ended.removeEventListener('abort', over);
      resolve();
    };
    const timer = setTimeout(over, roomMs).unref();
    ended.addEventListener('abort', over);
  });

async function perform(floor: Floor, thread: AnalysisThread, found: Waiting): Promise<void> {
  const { context, busy, aside } = floor;
  const { sessionId } = found;
  const waiting = { ...found, tries: Math.min(found.tries, aside.get(sessionId) ?? Infinity) };
  busy.add(sessionId);
  try {
    if (await settled(floor, thread, waiting)) aside.delete(sessionId);
    else await putAside(floor, waiting);
  } catch (error) {
    // Not even its failure could be entered.
    complain(context, error);
    await putAside(floor, waiting);
  } finally {
    busy.delete(sessionId);
  }
}

/** No room on the disk is no fault of the job: its tries stay as they were, and others go before it. */
async function putAside(floor: Floor, waiting: Waiting): Promise<void> {
  floor.aside.set(waiting.sessionId, waiting.tries);
  await setTries(floor.context, waiting, waiting.tries).catch(() => undefined);
  await pause(floor);
}

/** Tries it once and enters what comes of it; false where there was no room. */
async function settled(
  { context, ended }: Floor,
  thread: AnalysisThread,
  waiting: Waiting,
): Promise<boolean> {
  const { sessionId, studentId, tries } = waiting;
  // Counted before it is tried: a crash of the whole hub counts too.
  await setTries(context, waiting, tries + 1);
  const answer = tries < MOST_TRIES ? await tried(context, thread, waiting, ended) : HUB_STOPPED;
  // It was the end of the hub that ended it.
  if (ended.aborted && !answer.ok) await setTries(context, waiting, tries);
  else if (!answer.ok && answer.noRoom) return false;
  else if (!answer.ok) await enterFailure(context, waiting, answer);
  const there = await context.db
    .selectFrom('session')
    .select('id')
    .where('id', '=', sessionId)
    .executeTakeFirst();
  if (there === undefined)
    await removeSessionFiles(sessionPaths(context.places, studentId, sessionId));
  return true;
}

const HUB_STOPPED = failureOf(new Error(API_TEXTS['hub-stopped']));

/** Analyses it and enters what was found; whatever is thrown on the way is a failure like any other. */
async function tried(
  context: HubContext,
  thread: AnalysisThread,
  waiting: Waiting,
  ended: AbortSignal,
): Promise<JobAnswer> {
  try {
    const job = await jobOf(context, waiting);
    if (ended.aborted) return HUB_STOPPED;
    const answer = await thread.run(job);
    if (answer.ok) await enterFound(context, waiting, answer);
    return answer;
  } catch (error) {
    return failureOf(error);
  }
}
