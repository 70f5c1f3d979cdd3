import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { request } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { TestHub } from '../testHub.ts';

/** A shipped session: simulated, 6 minutes. */
export const SESSION = readFileSync(
  new URL('../../../recordings/right-mixed.zip', import.meta.url),
);
export const OTHER = readFileSync(new URL('../../../recordings/left-mixed.zip', import.meta.url));

export const sha256 = (bytes: Uint8Array): string =>
  createHash('sha256').update(bytes).digest('hex');

export const uploadUrl = (clientId: string): string => `/api/machine/uploads/${clientId}`;

export const announced = (bytes: Uint8Array) => ({ sha256: sha256(bytes), bytes: bytes.length });

export const announce = (hub: TestHub, who: string, clientId: string, bytes: Uint8Array) =>
  hub.ask(who, { url: uploadUrl(clientId), method: 'PUT', payload: announced(bytes) });

export const send = (
  hub: TestHub,
  who: string,
  clientId: string,
  bytes: Uint8Array,
  offset = 0,
  end = bytes.length,
) =>
  hub.ask(who, {
    url: uploadUrl(clientId),
    method: 'PATCH',
    headers: { 'content-type': 'application/octet-stream', 'upload-offset': String(offset) },
    payload: Buffer.from(bytes.subarray(offset, end)),
  });

/** Announces and sends in one go. */
export async function upload(hub: TestHub, who: string, clientId: string, bytes: Uint8Array) {
  const first = await announce(hub, who, clientId, bytes);
  return first.statusCode === 200 && !first.json<{ complete: boolean }>().complete
    ? send(hub, who, clientId, bytes)
    : first;
}

export async function listen(hub: TestHub): Promise<number> {
  await hub.app.listen({ port: 0, host: '127.0.0.1' });
  return (hub.app.server.address() as AddressInfo).port;
}

export interface Connection {
  readonly port: number;
  readonly headers: Record<string, string>;
}

/** Sends from `from` and destroys the connection once `cutAt` bytes have been handed over. */
export function sendCut(
  { port, headers }: Connection,
  clientId: string,
  bytes: Uint8Array,
  from: number,
  cutAt: number,
): Promise<void> {
  return new Promise((resolve) => {
    const sending = request({
      port,
      host: '127.0.0.1',
      method: 'PATCH',
      path: uploadUrl(clientId),
      headers: {
        ...headers,
        'content-type': 'application/octet-stream',
        'upload-offset': String(from),
        'content-length': String(bytes.length - from),
      },
    });
    sending.on('error', () => undefined);
    sending.on('close', () => resolve());
    sending.on('response', (answer) => answer.resume());
    sending.write(bytes.subarray(from, cutAt), () => {
      if (cutAt < bytes.length) sending.destroy();
      else sending.end();
    });
  });
}

export const sessionsOf = (hub: TestHub, studentId: string) =>
  hub.context.db
    .selectFrom('session')
    .selectAll()
    .where('studentId', '=', studentId)
    .orderBy('receivedMs')
    .execute();
