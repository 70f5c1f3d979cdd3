import type { FastifyInstance } from 'fastify';

const HOST = '127.0.0.1';
const TRIES = 50;

const isTaken = (error: unknown): boolean =>
  error instanceof Error && 'code' in error && error.code === 'EADDRINUSE';

/**
 * Listens on this computer only. Where the port is taken, the next free one is used, unless it was asked for.
 * @throws Error in words where no port can be had.
 */
export async function listenLocally(
  app: FastifyInstance,
  port: number,
  mayMove: boolean,
): Promise<{ readonly port: number; readonly url: string }> {
  const last = mayMove ? Math.min(port + TRIES, 65535) : port;
  for (let at = port; at <= last; at++) {
    try {
      await app.listen({ host: HOST, port: at });
      const address = app.server.address();
      const used = typeof address === 'object' && address !== null ? address.port : at;
      return { port: used, url: `http://${HOST}:${used}/` };
    } catch (error) {
      if (!isTaken(error)) throw error;
    }
  }
  throw new Error(
    mayMove
      ? `No free port from ${port} to ${last}. Give one with --port N.`
      : `Port ${port} is taken by another program. Give another one with --port N, or leave the option out.`,
  );
}
