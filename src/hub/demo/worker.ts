import { parentPort } from 'node:worker_threads';
import { failureOf } from '../analysis/failure.ts';
import { type DemoAnswer, type DemoOrder, simulateDemo } from './simulate.ts';

const port = parentPort;
if (port === null) throw new Error('to be started as a worker');

port.on('message', (order: DemoOrder) => {
  void simulateDemo(order)
    .catch((error: unknown): DemoAnswer => ({
      sessionId: order.sessionId,
      sha256: '',
      bytes: 0,
      answer: failureOf(error),
    }))
    .then((answer) => port.postMessage(answer));
});
