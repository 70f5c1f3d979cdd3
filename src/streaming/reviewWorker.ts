import { parentPort } from 'node:worker_threads';
import { failedOf } from '../sessions/threads/failed.ts';
import { reviewCache, stampOf } from './reviewCache.ts';
import type { ReviewAnswer, ReviewJob } from './reviewThread.ts';
import { compute, overviewIn } from './reviewing.ts';

const port = parentPort;
if (port === null) throw new Error('to be started as a worker');

async function review({ reviewed, cache }: ReviewJob): Promise<ReviewAnswer> {
  const { id, folder } = reviewed;
  const stamp = cache === null ? null : await stampOf(folder);
  const { analysis, curves } = await compute(reviewed);
  const overview = overviewIn({ analysis, curves });
  // A full disk is no reason to refuse the page.
  const onDisk =
    cache !== null &&
    stamp !== null &&
    (await reviewCache(cache)
      .keep(id, stamp, { overview, curves })
      .then(
        () => true,
        () => false,
      ));
  return { ok: true, analysis, overview, curves: onDisk ? null : curves };
}

port.on('message', (job: ReviewJob) => {
  void review(job)
    .catch(failedOf)
    .then((answer) => port.postMessage(answer));
});
