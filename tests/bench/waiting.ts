/**
 * How long the service's own thread is held up while an hour's recording is taken in over HTTP, and while one that
 * was cut off is recovered: a practice and the pages would wait so long. `npm run bench:waiting`.
 */
import { cpSync, createReadStream, mkdtempSync, rmSync, statSync } from 'node:fs';
import { request } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type IntervalHistogram, monitorEventLoopDelay } from 'node:perf_hooks';
import { pipeline } from 'node:stream/promises';
import { setTimeout as pause } from 'node:timers/promises';
import Fastify from 'fastify';
import { type SessionStore, openStore } from '../../src/sessions/store/store.ts';
import { zipSession } from '../../src/sessions/write/zipSession.ts';
import { registerSessionsApi } from '../../src/streaming/sessionsApi.ts';
import { writeSimulated } from '../sessions/simulated.ts';

/** An hour of practice. */
const TRIPLES = 120;
const MB = 2 ** 20;
const scratch = mkdtempSync(join(tmpdir(), 'stillcatch-bench-'));

async function watched(what: string, work: () => Promise<unknown>): Promise<void> {
  const delay: IntervalHistogram = monitorEventLoopDelay({ resolution: 1 });
  await pause(300);
  delay.enable();
  await pause(300);
  delay.reset();
  const from = performance.now();
  await work();
  const s = (performance.now() - from) / 1000;
  await pause(50);
  delay.disable();
  const ms = (ns: number): string => (ns / 1e6).toFixed(1);
  console.log(
    `${what.padEnd(44)} ${s.toFixed(1)} s; held up: median ${ms(delay.percentile(50))}, ` +
      `99 % ${ms(delay.percentile(99))}, 99.9 % ${ms(delay.percentile(99.9))}, most ${ms(delay.max)} ms`,
  );
}

async function posted(store: SessionStore, zip: string): Promise<void> {
  const app = Fastify();
  registerSessionsApi(app, { store, problem: null, folder: store.places.root });
  await app.listen({ port: 0 });
  const { port } = app.server.address() as AddressInfo;
  await watched('taking in over HTTP', async () => {
    const headers = { 'content-type': 'application/zip', 'content-length': statSync(zip).size };
    const sending = request({ port, path: '/api/import', method: 'POST', headers });
    const answered = new Promise<void>((resolve, reject) =>
      sending.on('error', reject).on('response', (answer) => {
        answer.resume().on('end', resolve);
        if (answer.statusCode !== 201) reject(new Error(`answered with ${answer.statusCode}`));
      }),
    );
    await pipeline(createReadStream(zip), sending);
    await answered;
  });
  await app.close();
}

const folder = join(scratch, 'hour');
await writeSimulated(folder, { seed: 5, script: Array(TRIPLES).fill('r r b').join(' ') });
const zip = join(scratch, 'hour.zip');
await zipSession(folder, zip);
console.log(`recording of ${(statSync(zip).size / MB).toFixed(0)} MB packed`);

await watched('nothing at all (a second)', () => pause(1000));
const store = await openStore(join(scratch, 'imports'));
await posted(store, zip);
const [taken] = await store.list();
console.log(`  ${((taken?.durationS ?? 0) / 60).toFixed(0)} min, ${taken?.rehearsals} rehearsals`);
await store.close();

const root = join(scratch, 'recovers');
await (await openStore(root)).close();
cpSync(folder, join(root, 'sessions', 'cutOff'), { recursive: true });
const cut = await openStore(root);
await watched('recovering', () => cut.recover());
console.log(`  ${(await cut.list())[0]?.rehearsals} rehearsals`);
await cut.close();
rmSync(scratch, { recursive: true, force: true });
