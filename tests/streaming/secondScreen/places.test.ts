import { type Socket, connect } from 'node:net';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { ADDRESS, ask, practiceOf, screenAt } from './screen.ts';

const ends: (() => unknown)[] = [];
afterEach(async () => {
  for (const end of ends.splice(0).reverse()) await end();
});

const MOST = 40;
const UPGRADE =
  'Connection: Upgrade\r\nUpgrade: websocket\r\nSec-WebSocket-Version: 13\r\nSec-WebSocket-Key: AAAAAAAAAAAAAAAAAAAAAA==\r\n\r\n';

async function start(): Promise<URL> {
  const { host } = practiceOf([]);
  const { screen } = screenAt(ADDRESS, host);
  ends.push(() => screen.switchOff());
  await screen.switchOn(ADDRESS);
  return new URL(screen.view().on!.url);
}

/** One that says so much and then neither speaks nor hangs up. */
function stubborn({ hostname, port }: URL, says: string): Promise<Socket> {
  return new Promise((resolve) => {
    const socket = connect({ host: hostname, port: Number(port), allowHalfOpen: true });
    ends.push(() => socket.destroy());
    socket.on('error', () => undefined).on('data', () => undefined);
    socket.once('connect', () => {
      if (says !== '') socket.write(says);
      resolve(socket);
    });
  });
}

describe('the places of a second screen', () => {
  it.each([
    ['say nothing', (): string => ''],
    [
      'ask for a socket that is none',
      (host: string) => `GET /x HTTP/1.1\r\nHost: ${host}\r\n${UPGRADE}`,
    ],
    [
      'ask for the live view unpaired',
      (host: string) =>
        `GET /socket.io/?EIO=4&transport=websocket HTTP/1.1\r\nHost: ${host}\r\n${UPGRADE}`,
    ],
    ['have had their answer', (host: string) => `GET /pair HTTP/1.1\r\nHost: ${host}\r\n\r\n`],
  ])('are free again after those who %s, whether they hang up or not', async (_what, says) => {
    const url = await start();
    for (let n = 0; n < MOST; n++) await stubborn(url, says(url.host));
    await vi.waitFor(async () => expect((await ask(String(url))).status).toBe(200), {
      timeout: 120_000,
      interval: 500,
    });
  });
});
