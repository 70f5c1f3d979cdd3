import { parentPort } from 'node:worker_threads';
import { analyse } from './analyse.ts';
import { failureOf } from './failure.ts';
import type { Job, JobAnswer } from './jobMessages.ts';

// A thread of its own: whatever an analysis costs, the hub's pages do not wait for it.
const port = parentPort;
if (port === null) throw new Error('to be started as a worker');

port.on('message', (job: Job) => {
  void analyse(job)
    .catch((error: unknown): JobAnswer => failureOf(error))
    .then((answer) => port.postMessage(answer));
});
