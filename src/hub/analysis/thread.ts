import type { Worker } from 'node:worker_threads';
import { sentence } from '../../streaming/apiErrors.ts';
import { startThread } from '../startThread.ts';
import type { Job, JobAnswer } from './jobMessages.ts';

/** One worker thread: started when it is needed, ended when it has had nothing to do for a while. */
export interface AnalysisThread {
  /** One job at a time. Whatever becomes of the thread, there is an answer. */
  run(job: Job): Promise<JobAnswer>;
  close(): Promise<void>;
}

/** Choices. An hour's session takes seconds; a thread that takes so long hangs. */
const MOST_MS = 15 * 60_000;
const IDLE_MS = 20_000;
const MEMORY_MB = 768;

export function analysisThread(): AnalysisThread {
  let worker: Worker | null = null;
  let idle: NodeJS.Timeout | null = null;
  const end = async (): Promise<void> => {
    if (idle !== null) clearTimeout(idle);
    const ending = worker;
    worker = null;
    await ending?.terminate();
  };
  return {
    async run(job) {
      if (idle !== null) clearTimeout(idle);
      worker ??= begin();
      const { answer, alive } = await answerOf(worker, job);
      if (!alive) worker = null;
      idle = setTimeout(() => void end(), IDLE_MS).unref();
      return answer;
    },
    close: end,
  };
}

const begin = (): Worker =>
  startThread('worker', import.meta.url, { maxOldGenerationSizeMb: MEMORY_MB });

const gone = (why: string): JobAnswer => ({ ok: false, problem: why, lasting: false });

/** `alive`: the thread can take another job. */
interface Ran {
  readonly answer: JobAnswer;
  readonly alive: boolean;
}

function answerOf(worker: Worker, job: Job): Promise<Ran> {
  return new Promise((resolve) => {
    const hung = setTimeout(() => void worker.terminate(), MOST_MS);
    const settle = (answer: JobAnswer, alive: boolean): void => {
      clearTimeout(hung);
      worker.off('message', onAnswer);
      if (alive) worker.off('error', onError).off('exit', onExit);
      resolve({ answer, alive });
    };
    const onAnswer = (answer: JobAnswer): void => settle(answer, true);
    const onError = (error: Error): void => settle(gone(sentence(error.message)), false);
    const onExit = (): void => settle(gone('The analysis ended without an answer.'), false);
    worker.on('message', onAnswer).on('error', onError).on('exit', onExit);
    worker.postMessage(job);
  });
}
