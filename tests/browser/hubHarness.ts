import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildHub } from '../../src/hub/app.ts';
import type { HubContext } from '../../src/hub/context.ts';
import { openHubData } from '../../src/hub/db/open.ts';
import { servePages } from '../../src/hub/pages.ts';
import { builtPage } from './pageHarness.ts';

export interface RunningHub {
  readonly context: HubContext;
  readonly url: string;
  /** What the terminal shows: the code of the first run among it. */
  readonly said: readonly string[];
  end(): Promise<void>;
}

const freePort = (): Promise<number> =>
  new Promise((resolve, reject) => {
    const server = createServer();
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      const port = typeof address === 'object' && address !== null ? address.port : 0;
      server.close(() => resolve(port));
    });
  });

/**
 * A new hub with nobody in it, as `npm run hub` starts it, on a free port.
 * @param pages folder of the built pages; built anew from the tree where none is given
 */
export async function startHub(pages?: string): Promise<RunningHub> {
  const root = mkdtempSync(join(tmpdir(), 'stillcatch-hub-'));
  const data = await openHubData(root);
  const port = await freePort();
  const url = `http://localhost:${port}`;
  const said: string[] = [];
  const context: HubContext = {
    db: data.db,
    places: data.places,
    settings: { publicUrl: url },
    now: Date.now,
    say: (sentence) => said.push(sentence),
  };
  const hub = await buildHub(context);
  await servePages(hub.app, pages ?? (await builtPage()));
  await hub.app.listen({ port, host: '127.0.0.1' });
  const end = async (): Promise<void> => {
    await hub.app.close();
    await data.close();
    rmSync(root, { recursive: true, force: true });
  };
  return { url, said, end, context };
}

const recording = (name: string): Buffer =>
  readFileSync(fileURLToPath(new URL(`../../recordings/${name}.zip`, import.meta.url)));

/** Pairs a computer by a code and sends a shipped recording, as the student's service does. */
export async function sendRecording(url: string, code: string, name: string): Promise<string> {
  const paired = await fetch(`${url}/api/pair`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ code, machine: 'Garage laptop' }),
  });
  const { token } = (await paired.json()) as { token: string };
  const headers = { authorization: `Bearer ${token}` };
  const bytes = recording(name);
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  const at = `${url}/api/machine/uploads/${name.replaceAll('-', '')}`;
  const announced = await fetch(at, {
    method: 'PUT',
    headers: { ...headers, 'content-type': 'application/json' },
    body: JSON.stringify({ sha256, bytes: bytes.length }),
  });
  if (!announced.ok) throw new Error(await announced.text());
  const sent = await fetch(at, {
    method: 'PATCH',
    headers: { ...headers, 'content-type': 'application/octet-stream', 'upload-offset': '0' },
    body: new Uint8Array(bytes),
  });
  if (!sent.ok) throw new Error(await sent.text());
  return token;
}
