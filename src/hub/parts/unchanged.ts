import { createHash } from 'node:crypto';
import type { FastifyInstance } from 'fastify';

/** Names an answer by its text. */
export const etagOf = (payload: string): string =>
  `"${createHash('sha256').update(payload).digest('base64url')}"`;

/** A page that asks again gets 304 and nothing else where the answer is what it has (RFC 9110, 13.1.2). */
export function tellUnchanged(api: FastifyInstance): void {
  api.addHook('onSend', async (request, reply, payload) => {
    if (request.method !== 'GET' || reply.statusCode !== 200 || typeof payload !== 'string')
      return payload;
    const etag = etagOf(payload);
    reply.header('etag', etag);
    if (request.headers['if-none-match'] !== etag) return payload;
    reply.code(304);
    return null;
  });
}
