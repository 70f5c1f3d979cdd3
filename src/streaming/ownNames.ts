import type { FastifyInstance } from 'fastify';

/** As a browser names this computer in a request, whatever the port. */
const LOOPBACK = /^(localhost|127\.0\.0\.1|\[::1\])(:\d+)?$/i;

export const isLoopbackHost = (host: string | undefined): boolean => LOOPBACK.test(host ?? '');

/**
 * Refuses requests under a name that merely points at this computer (DNS rebinding): a page of another site would
 * count as a page of ours. `url`: the address that others reach it by, where there is one.
 */
export function refuseOtherNames(app: FastifyInstance, url: string | null, sentence: string): void {
  const own = url === null ? null : new URL(url).host;
  app.addHook('onRequest', async ({ headers: { host } }, reply) => {
    if (isLoopbackHost(host) || host?.toLowerCase() === own) return;
    await reply.code(421).type('text/plain; charset=utf-8').send(sentence);
  });
}
