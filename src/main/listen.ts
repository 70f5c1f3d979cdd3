import type { FastifyInstance } from 'fastify';
import { listenWords } from './words.ts';

const LOOPBACK = '127.0.0.1';
const TRIES = 50;

const isTaken = (error: unknown): boolean =>
  error instanceof Error && 'code' in error && error.code === 'EADDRINUSE';

/**
 * Listens at one address only. Where the port is taken, the next free one is used, unless it was asked for.
 * @throws Error in words where no port can be had.
 */
export async function listenAt(
  app: FastifyInstance,
  host: string,
  port: number,
  mayMove: boolean,
): Promise<{ readonly port: number; readonly url: string }> {
  const last = mayMove ? Math.min(port + TRIES, 65535) : port;
  for (let at = port; at <= last; at++) {
    try {
      await app.listen({ host, port: at });
      const address = app.server.address();
      const used = typeof address === 'object' && address !== null ? address.port : at;
      return { port: used, url: `http://${host.includes(':') ? `[${host}]` : host}:${used}/` };
    } catch (error) {
      if (!isTaken(error)) throw new Error(listenWords(error, host, at), { cause: error });
    }
  }
  throw new Error(
    mayMove
      ? `No free port from ${port} to ${last}. Give one with --port N.`
      : `Port ${port} is used by another program. Choose another one with --port N, or leave out the option.`,
  );
}

/** On this computer only. */
export const listenLocally = (
  app: FastifyInstance,
  port: number,
  mayMove: boolean,
): ReturnType<typeof listenAt> => listenAt(app, LOOPBACK, port, mayMove);
