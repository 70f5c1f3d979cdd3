/**
 * Uploads to a hub of its own process with its real database: an hour's session, twenty at once, twenty large ones at
 * once; the memory of that process, and how long the web answers while sessions are analysed. `npm run bench:upload`.
 */
import {
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
import { setTimeout as pause } from 'node:timers/promises';
import { pipeline } from 'node:stream/promises';
import { zipSync } from 'fflate';
import { sha256Of } from '../../src/hub/uploads/staging.ts';
import { percentile } from '../../src/math/stats.ts';
import { openFiles } from '../../src/sessions/files/openFiles.ts';
import type { HubSessionList } from '../../src/streaming/hubContract/review.ts';
import type { StudentList } from '../../src/streaming/hubContract/students.ts';
import { uploadUrl } from '../hub/uploads/sending.ts';
import { writeSimulated } from '../sessions/simulated.ts';
import { type HubProcess, hubProcess } from './hubProcess.ts';

const AT_ONCE = 20;
const BOUND_MB = 250;
const MB = 2 ** 20;
const scratch = mkdtempSync(join(tmpdir(), 'stillcatch-bench-'));

/** A session's files by name; nothing is packed, so that all of it goes over the line. */
async function simulated(name: string, triples: number): Promise<Record<string, Uint8Array>> {
  const folder = join(scratch, name);
  await writeSimulated(folder, { seed: 5, script: Array(triples).fill('r r b').join(' ') });
  const files = await openFiles(folder);
  const all = Object.fromEntries(
    files.names.map((file) => [file, new Uint8Array(readFileSync(join(folder, file)))]),
  );
  await files.close();
  rmSync(folder, { recursive: true });
  return all;
}

/** The `i`th of several recordings that differ in one mark. */
function stored(files: Record<string, Uint8Array>, i: number): string {
  const path = join(scratch, `session${i}.zip`);
  const events = Object.keys(files).find((name) => name.endsWith('_events.tsv')) ?? '';
  const marked = Buffer.concat([
    files[events] ?? new Uint8Array(),
    Buffer.from(`${(1000 + i).toFixed(6)}\t0.000000\tmark-tap\tn/a\tn/a\n`),
  ]);
  writeFileSync(path, zipSync({ ...files, [events]: marked }, { level: 0 }));
  return path;
}

async function send({ url, headers }: HubProcess, path: string, clientId: string): Promise<void> {
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
        let said = '';
        answer.on('data', (part: Buffer) => (said += part.toString()));
        answer.on('end', () =>
          answer.statusCode === 200 && (JSON.parse(said) as { complete: boolean }).complete
            ? resolve()
            : reject(new Error(`answered with ${answer.statusCode}: ${said}`)),
        );
      },
    );
    pipeline(createReadStream(path), sending).catch(reject);
  });
}

/** Sends them all at once to a new hub and tells what its memory did. */
async function trial(what: string, files: Record<string, Uint8Array>, n: number): Promise<void> {
  const data = join(scratch, 'data');
  const hub = await hubProcess(data);
  const paths = Array.from({ length: n }, (_, i) => stored(files, i));
  const rawMb = statSync(paths[0] ?? '').size / MB;
  await pause(500);
  const idle = hub.memory();
  const from = performance.now();
  await Promise.all(paths.map((path, i) => send(hub, path, `s${i}`)));
  const s = (performance.now() - from) / 1000;
  const sending = hub.memory();
  console.log(`\n${what}: ${n} of ${rawMb.toFixed(0)} MB in ${s.toFixed(1)} s, no error`);
  tell('idle', idle?.now);
  tell('most while sending', sending?.most, idle?.now);
  const asked = await whileAnalysing(hub);
  tell('most while analysing too', hub.memory()?.most, idle?.now, null);
  console.log(
    `  ${asked.length} requests while it analysed: median ${(percentile(asked, 0.5) ?? 0).toFixed(1)} ms, ` +
      `95 % ${(percentile(asked, 0.95) ?? 0).toFixed(1)} ms, most ${Math.max(...asked).toFixed(1)} ms`,
  );
  await hub.end();
  rmSync(data, { recursive: true });
}

function tell(name: string, bytes?: number, idle?: number, bound: number | null = BOUND_MB): void {
  if (bytes === undefined) return console.log(`  ${name}: this system does not tell`);
  const grown = idle === undefined ? '' : ` (+${((bytes - idle) / MB).toFixed(0)})`;
  const verdict =
    idle === undefined || bound === null
      ? ''
      : `, bound ${bound}: ${bytes / MB <= bound ? 'met' : 'NOT met'}`;
  console.log(`  ${name}: ${(bytes / MB).toFixed(0)} MB${grown}${verdict}`);
}

/** How long the coach's pages take to answer until three sessions have been analysed, or all. */
async function whileAnalysing(hub: HubProcess): Promise<number[]> {
  const asked: number[] = [];
  const [student] = (await hub.ask<StudentList>('students')).students;
  for (;;) {
    const at = performance.now();
    const { sessions } = await hub.ask<HubSessionList>(`students/${student?.id}/sessions`);
    asked.push(performance.now() - at);
    const done = sessions.filter(({ summary }) => summary.analysed).length;
    if (done >= Math.min(3, sessions.length)) return asked;
    await pause(100);
  }
}

const hour = await simulated('hour', 50);
await trial('one session', hour, 1);
await trial('at once', hour, AT_ONCE);
await trial('large ones at once', await simulated('long', 170), AT_ONCE);
rmSync(scratch, { recursive: true, force: true });
