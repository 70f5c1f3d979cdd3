import { type Failed, errorOf } from '../../sessions/threads/failed.ts';
import { type JobThread, jobThread } from '../../sessions/threads/jobThread.ts';
import { startThread } from '../../sessions/threads/startThread.ts';
import { Refused } from '../../streaming/apiErrors.ts';
import type { HubContext } from '../context.ts';
import type { Looked } from './look.ts';

export type LookAnswer = { readonly ok: true; readonly looked: Looked } | Failed;

/** Choices: tables of a session are small, and the largest session is read in seconds. */
const MEMORY = { maxOldGenerationSizeMb: 512, maxYoungGenerationSizeMb: 12 };
const MOST_MS = 2 * 60_000;

/** Each hub's thread, while it runs. */
const threads = new WeakMap<HubContext, JobThread<string, LookAnswer>>();

function threadOf(context: HubContext): JobThread<string, LookAnswer> {
  const there = threads.get(context);
  if (there !== undefined) return there;
  const thread = jobThread<string, LookAnswer>({
    start: () => startThread('lookWorker', import.meta.url, MEMORY),
    gone: (message) => ({ ok: false, code: null, message }),
    mostMs: MOST_MS,
  });
  threads.set(context, thread);
  return thread;
}

/**
 * What a zip from elsewhere says of itself, read and checked in a thread of its own, one after the other.
 * @throws SessionError in words where it is no sound session; Refused where the thread broke off
 */
export async function looked(context: HubContext, zip: string): Promise<Looked> {
  const answer = await threadOf(context).run(zip);
  if (answer.ok) return answer.looked;
  if (answer.code !== null) throw errorOf(answer);
  context.say(`Reading a recording broke off: ${answer.message}`);
  throw new Refused(503, 'broke-off', 'The recording could not be read now. Try again later.');
}

export async function endLooking(context: HubContext): Promise<void> {
  const thread = threads.get(context);
  threads.delete(context);
  await thread?.close();
}
