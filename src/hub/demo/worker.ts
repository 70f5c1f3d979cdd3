import { parentPort } from 'node:worker_threads';
import { type DemoAnswer, type DemoOrder, simulateDemo } from './simulate.ts';

const port = parentPort;
if (port === null) throw new Error('to be started as a worker');

port.on('message', (order: DemoOrder) => {
  void simulateDemo(order)
    .catch((error: unknown): DemoAnswer => {
      const problem = error instanceof Error ? error.message : String(error);
      const answer = { ok: false, problem, lasting: true } as const;
      return { sessionId: order.sessionId, sha256: '', bytes: 0, answer };
    })
    .then((answer) => port.postMessage(answer));
});
