/**
 * Uploads to a hub with its real database: an hour's session (about 25 MB raw), the same raw and packed twenty at
 * once, memory of the hub's process, and how long the web answers while sessions are analysed. `npm run bench:upload`.
 * The hub runs in this process; senders share it, so that its memory is at most what is printed.
 */
import {
  copyFileSync,
  createReadStream,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { zipSync } from 'fflate';
import { sha256Of } from '../../src/hub/uploads/staging.ts';
import { percentile } from '../../src/math/stats.ts';
import { openFiles } from '../../src/sessions/files/openFiles.ts';
import { zipSession } from '../../src/sessions/write/zipSession.ts';
import { testHub } from '../hub/testHub.ts';
import { uploadUrl } from '../hub/uploads/sending.ts';
import { writeSimulated } from '../sessions/simulated.ts';

const AT_ONCE = 20;
const BOUND_MB = 250;
const TRIPLES = 50;
const MB = 2 ** 20;

const scratch = mkdtempSync(join(tmpdir(), 'stillcatch-bench-'));
const folder = join(scratch, 'hour');
await writeSimulated(folder, { seed: 5, script: Array(TRIPLES).fill('r r b').join(' ') });
const packed = join(scratch, 'hour.zip');
await zipSession(folder, packed);
const stored = join(scratch, 'stored.zip');
await storeRaw();

/** The same session unpacked inside its zip: 25 MB really go over the line. */
async function storeRaw(): Promise<void> {
  const files = await openFiles(folder);
  const entries = Object.fromEntries(
    files.names.map((name) => [name, new Uint8Array(readFileSync(join(folder, name)))]),
  );
  await files.close();
  writeFileSync(stored, zipSync(entries, { level: 0 }));
}

const hub = await testHub();
await hub.app.listen({ port: 0, host: '127.0.0.1' });
const address = hub.app.server.address();
const url = `http://127.0.0.1:${typeof address === 'object' ? address?.port : ''}`;
const headers = await hub.headersOf('sam:machine');

let most = 0;
const watch = setInterval(() => (most = Math.max(most, process.memoryUsage().rss)), 10);

async function send(path: string, clientId: string): Promise<void> {
  const bytes = statSync(path).size;
  const announced = await fetch(`${url}${uploadUrl(clientId)}`, {
    method: 'PUT',
    headers: { ...headers, 'content-type': 'application/json' },
    body: JSON.stringify({ bytes, sha256: await sha256Of(path) }),
  });
  if (!announced.ok) throw new Error(await announced.text());
  await new Promise<void>((resolve, reject) => {
    const sending = request(
      `${url}${uploadUrl(clientId)}`,
      {
        method: 'PATCH',
        headers: {
          ...headers,
          'content-type': 'application/octet-stream',
          'upload-offset': '0',
          'content-length': bytes,
        },
      },
      (answer) => {
        answer.resume();
        if (answer.statusCode === 200) answer.on('end', resolve);
        else reject(new Error(`answered with ${answer.statusCode}`));
      },
    );
    pipeline(createReadStream(path), sending).catch(reject);
  });
}

async function measured(what: string, work: () => Promise<void>, bound?: number): Promise<void> {
  globalThis.gc?.();
  const before = process.memoryUsage().rss;
  most = before;
  const from = performance.now();
  await work();
  const [grown, s] = [(most - before) / MB, (performance.now() - from) / 1000];
  const verdict =
    bound === undefined ? '' : `   bound ${bound}: ${grown <= bound ? 'met' : 'NOT met'}`;
  console.log(
    `${what.padEnd(52)}${s.toFixed(1).padStart(7)} s  memory +${grown.toFixed(0)} MB${verdict}`,
  );
}

/** The same file under another path. */
function another(of: string, i: number): string {
  const path = join(scratch, `copy${i}.zip`);
  copyFileSync(of, path);
  return path;
}

console.log(
  `raw ${(statSync(stored).size / MB).toFixed(1)} MB, packed ${(statSync(packed).size / MB).toFixed(1)} MB`,
);
await hub.context.db.deleteFrom('job').execute();
await measured('one hour, 25 MB over the line', () => send(stored, 'one'), BOUND_MB);
await hub.context.db.deleteFrom('session').execute();
await measured(
  `${AT_ONCE} at once (each checked; kept once)`,
  async () => {
    const paths = Array.from({ length: AT_ONCE }, (_, i) => another(stored, i));
    await Promise.all(paths.map((path, i) => send(path, `many${i}`)));
  },
  BOUND_MB,
);

const asked: number[] = [];
const waiting = async (): Promise<boolean> =>
  (await hub.context.db.selectFrom('job').select('sessionId').execute()).length > 0;
const from = performance.now();
while (await waiting()) {
  const at = performance.now();
  await fetch(`${url}/api/machine/inbox`, { headers }).then((r) => r.text());
  asked.push(performance.now() - at);
  await new Promise((go) => setTimeout(go, 20));
}
console.log(
  `analysis of the hour's session: ${((performance.now() - from) / 1000).toFixed(1)} s in its thread; ` +
    `${asked.length} requests meanwhile: median ${(percentile(asked, 0.5) ?? 0).toFixed(1)} ms, ` +
    `95 % ${(percentile(asked, 0.95) ?? 0).toFixed(1)} ms, most ${Math.max(...asked).toFixed(1)} ms`,
);
clearInterval(watch);
await hub.close();
rmSync(scratch, { recursive: true, force: true });
