import type { Worker } from 'node:worker_threads';

/** One worker thread: started when it is needed, ended when it has had nothing to do for a while. */
export interface JobThread<Job, Answer> {
  /** One job after the other. Whatever becomes of the thread, there is an answer. */
  run(job: Job): Promise<Answer>;
  close(): Promise<void>;
}

export interface JobThreadOptions<Answer> {
  readonly start: () => Worker;
  /** The answer where the thread ended without one, or was closed before. */
  readonly gone: (why: string) => Answer;
  /** A job that takes longer hangs: its thread is ended. ms */
  readonly mostMs?: number;
}

/** Choices. An hour's session takes seconds; a thread that takes so long hangs. */
const MOST_MS = 15 * 60_000;
const IDLE_MS = 20_000;

export function jobThread<Job, Answer>({
  start,
  gone,
  mostMs = MOST_MS,
}: JobThreadOptions<Answer>): JobThread<Job, Answer> {
  let worker: Worker | null = null;
  let idle: NodeJS.Timeout | null = null;
  let closed = false;
  let turn: Promise<unknown> = Promise.resolve();
  const end = async (): Promise<void> => {
    if (idle !== null) clearTimeout(idle);
    const ending = worker;
    worker = null;
    await ending?.terminate();
  };
  /** Alone it does not keep the program alive; a job does. */
  const begun = (): Worker => {
    const begins = start();
    begins.unref();
    const forget = (): void => {
      if (worker === begins) worker = null;
    };
    // It may end while nothing is asked of it.
    return begins.on('error', forget).on('exit', forget);
  };
  const perform = async (job: Job): Promise<Answer> => {
    if (closed) return gone('the program ends');
    if (idle !== null) clearTimeout(idle);
    worker ??= begun();
    const { answer, alive } = await answerOf(worker, job, { gone, mostMs });
    if (!alive) worker = null;
    idle = setTimeout(() => void end(), IDLE_MS).unref();
    return answer;
  };
  return {
    run(job) {
      const answering = turn.then(() => perform(job));
      turn = answering.catch(() => undefined);
      return answering;
    },
    close() {
      closed = true;
      return end();
    },
  };
}

/** `alive`: the thread can take another job. */
interface Ran<Answer> {
  readonly answer: Answer;
  readonly alive: boolean;
}

function answerOf<Job, Answer>(
  worker: Worker,
  job: Job,
  { gone, mostMs }: Required<Omit<JobThreadOptions<Answer>, 'start'>>,
): Promise<Ran<Answer>> {
  return new Promise((resolve) => {
    const hung = setTimeout(() => void worker.terminate(), mostMs);
    const settle = (answer: Answer, alive: boolean): void => {
      clearTimeout(hung);
      worker.off('message', onAnswer);
      if (alive) worker.off('error', onError).off('exit', onExit);
      resolve({ answer, alive });
    };
    const onAnswer = (answer: Answer): void => settle(answer, true);
    const onError = (error: Error): void => settle(gone(error.message), false);
    const onExit = (): void => settle(gone('the analysis ended without an answer'), false);
    worker.on('message', onAnswer).on('error', onError).on('exit', onExit);
    worker.postMessage(job);
  });
}
