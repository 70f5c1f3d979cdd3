import { once } from 'node:events';
import { type AddressInfo, connect } from 'node:net';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { type Hub, buildHub } from '../../src/hub/app.ts';
import { type TestHub, testHub } from './testHub.ts';

let hub: TestHub;
let small: Hub;
let port: number;
beforeEach(async () => {
  hub = await testHub();
  small = await buildHub(hub.context, { headersMs: 300, bodyIdleMs: 300 });
  await small.app.listen({ host: '127.0.0.1', port: 0 });
  ({ port } = small.app.server.address() as AddressInfo);
});
afterEach(async () => {
  await small.app.close();
  await hub.close();
});

/** Sends this much and then nothing; resolves with what came once the other side has ended the connection. */
async function sent(text: string): Promise<string> {
  const socket = connect(port, '127.0.0.1');
  let said = '';
  socket.on('data', (chunk: Buffer) => (said += chunk.toString()));
  socket.on('error', () => undefined);
  socket.write(text);
  await once(socket, 'close');
  return said;
}

const POST = 'POST /api/login HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n';

it('a request whose headers never end is ended', async () => {
  expect(await sent('GET /api/setup HTTP/1.1\r\nHost: loc')).toMatch(/^(HTTP\/1\.1 408|$)/);
});

it.each([
  ['of a stated length', `${POST}Content-Length: 100\r\n\r\n{"login"`],
  ['in pieces', `${POST}Transfer-Encoding: chunked\r\n\r\n8\r\n{"login"\r\n`],
])('a body %s that never ends is ended', async (_, text) => {
  await sent(text);
});

it('a slow body goes on for as long as something comes', async () => {
  const body = JSON.stringify({ login: 'nobody', password: 'not the right one' });
  const socket = connect(port, '127.0.0.1');
  let said = '';
  socket.on('data', (chunk: Buffer) => (said += chunk.toString()));
  socket.write(`${POST}Content-Length: ${body.length}\r\nConnection: close\r\n\r\n`);
  for (const letter of body) {
    socket.write(letter);
    await new Promise((done) => setTimeout(done, 20));
  }
  await once(socket, 'close');
  expect(said).toMatch(/^HTTP\/1\.1 403/);
});
