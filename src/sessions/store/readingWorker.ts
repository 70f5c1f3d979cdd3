import { parentPort } from 'node:worker_threads';
import { failedOf } from '../threads/failed.ts';
import type { Found } from './indexing.ts';
import { type ReadingAnswer, type ReadingJob, readHere } from './reading.ts';

const port = parentPort;
if (port === null) throw new Error('to be started as a worker');

function read(job: ReadingJob): Promise<string | Found> {
  switch (job.do) {
    case 'nameOf':
      return readHere.nameOf(job.path);
    case 'takeIn':
      return readHere.takeIn(job.path, job.session);
    case 'look':
      return readHere.look(job.session);
  }
}

port.on('message', (job: ReadingJob) => {
  void read(job)
    .then((done): ReadingAnswer => ({ ok: true, done }), failedOf)
    .then((answer) => port.postMessage(answer));
});
