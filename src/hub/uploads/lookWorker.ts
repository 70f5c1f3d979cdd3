import { parentPort } from 'node:worker_threads';
import { failedOf } from '../../sessions/threads/failed.ts';
import { lookInto } from './look.ts';
import type { LookAnswer } from './looking.ts';

// A thread of its own: whatever a zip from elsewhere costs to read, the hub's pages do not wait for it.
const port = parentPort;
if (port === null) throw new Error('to be started as a worker');

port.on('message', (zip: string) => {
  void lookInto(zip)
    .then((looked): LookAnswer => ({ ok: true, looked }), failedOf)
    .then((answer) => port.postMessage(answer));
});
