import type { FastifyInstance } from 'fastify';
import { VERSION } from '../../sessions/version.ts';
import type { HubContext } from '../context.ts';
import { type AnalysisQueue, analysisQueue } from './queue.ts';
import { reanalyseAll } from './requeue.ts';

/** Analyses what waits while the hub runs; after another version was installed, everything anew. */
export function analysisPart(api: FastifyInstance, context: HubContext): void {
  let queue: AnalysisQueue | null = null;
  api.addHook('onReady', async () => {
    const old = await reanalyseAll(context, VERSION);
    if (old > 0) context.say(`${old} sessions are analysed anew by version ${VERSION}.`);
    queue = analysisQueue(context);
  });
  api.addHook('onClose', async () => queue?.close());
}
