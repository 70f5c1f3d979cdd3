import type { Worker } from 'node:worker_threads';
import { startThread } from '../../sessions/threads/startThread.ts';
import type { DemoAnswer, DemoOrder } from './simulate.ts';

export interface DemoThreads {
  /** In this order, as many at once as there are threads; `take` gets each as it is done. */
  run(orders: readonly DemoOrder[], take: (answer: DemoAnswer) => Promise<void>): Promise<void>;
  close(): Promise<void>;
}

/** Threads that simulate, so that the hub's pages do not wait. */
export function demoThreads(count: number): DemoThreads {
  const workers = Array.from({ length: count }, () => startThread('worker', import.meta.url));
  let closing = false;
  return {
    async run(orders, take) {
      const waiting = [...orders];
      const work = async (worker: Worker): Promise<void> => {
        for (let order = waiting.shift(); order !== undefined; order = waiting.shift()) {
          const answer = await ask(worker, order);
          if (closing || answer === null) return;
          await take(answer);
        }
      };
      await Promise.all(workers.map(work));
    },
    async close() {
      closing = true;
      await Promise.all(workers.map((worker) => worker.terminate()));
    },
  };
}

/** `null` where the thread ended. */
const ask = (worker: Worker, order: DemoOrder): Promise<DemoAnswer | null> =>
  new Promise((resolve, reject) => {
    const settle = (done: () => void): void => {
      worker.off('message', onAnswer).off('error', onError).off('exit', onExit);
      done();
    };
    const onAnswer = (answer: DemoAnswer): void => settle(() => resolve(answer));
    const onError = (error: Error): void => settle(() => reject(error));
    const onExit = (): void => settle(() => resolve(null));
    worker.on('message', onAnswer).on('error', onError).on('exit', onExit);
    worker.postMessage(order);
  });
