import { Socket } from 'node:net';
import type { FastifyInstance } from 'fastify';

/** How long a request may take to arrive, ms. */
export interface ArrivalLimits {
  /** From the first byte to the end of its headers. */
  readonly headersMs: number;
  /** Between two pieces of its body: a slow one goes on for as long as something comes. */
  readonly bodyIdleMs: number;
}

/** Choices. */
export const ARRIVAL_LIMITS: ArrivalLimits = { headersMs: 15_000, bodyIdleMs: 30_000 };

/** For Node's server. A whole request has no limit, since an upload may take its time. */
export const httpLimits = ({ headersMs }: ArrivalLimits) => ({
  headersTimeout: headersMs,
  requestTimeout: 0,
  connectionsCheckingInterval: Math.min(headersMs, 5000),
});

/** Ends the connection of a request whose body does not go on. */
export function endStalledBodies(app: FastifyInstance, { bodyIdleMs }: ArrivalLimits): void {
  app.addHook('onRequest', async ({ raw, headers }) => {
    const brings = Number(headers['content-length'] ?? 0) > 0 || 'transfer-encoding' in headers;
    if (!brings) return;
    const { socket } = raw;
    // a request within the process has none
    if (!(socket instanceof Socket)) return;
    const end = (): void => void socket.destroy();
    socket.setTimeout(bodyIdleMs, end);
    raw.once('end', () => {
      socket.off('timeout', end);
      socket.setTimeout(0);
    });
  });
}
