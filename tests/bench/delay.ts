/**
 * Added delay inside the service: from a packet handed over by its source to the event at a page.
 * Several practices run at once in this process with their pages, so the figures are on the safe side.
 * `npm run bench:delay -- [seconds]`
 */
import type { AddressInfo } from 'node:net';
import { io } from 'socket.io-client';
import * as analysis from '../../src/analysis/analysis.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { buildStudentApp } from '../../src/main/studentApp.ts';
import { percentile } from '../../src/math/stats.ts';
import { practiceHost } from '../../src/practice/host.ts';
import { livePractice } from '../../src/practice/livePractice.ts';
import type { PracticeView } from '../../src/practice/view.ts';
import type { Batch } from '../../src/streaming/contract.ts';
import { simulated } from '../browser/simulated.ts';
import { benchFrames } from './frame.ts';

const BOUND_MS = 10;
const PRACTICES = 5;
/** The calibrations, played fast, and the compiler's first passes are over after this. */
const WARM_UP_MS = 10_000;
const seconds = Number(process.argv[2] ?? 60);
const now = (): number => performance.now();

const analysed: number[] = [];
const events: number[] = [];
const frames: number[] = [];

/** Names what a page is told at once, so that it can be found again in a batch. */
const urgentKey = ({ phase, last }: Pick<PracticeView, 'phase' | 'last'>): string =>
  `${phase.phase}@${phase.sinceS} ${last?.index ?? 0}`;

async function run(seed: number): Promise<() => Promise<void>> {
  const practice = livePractice({
    practiceId: String(seed),
    source: simulated('', 'right', seed),
    chain: analysis,
    settings: { hand: 'right', plan: DEFAULT_PLAN, emitFrames: true },
    now,
  });
  const app = await buildStudentApp({ host: practiceHost({ first: practice }), now });
  await app.listen({ host: '127.0.0.1', port: 0 });
  const page = io(`http://127.0.0.1:${(app.server.address() as AddressInfo).port}`, {
    transports: ['websocket'],
    forceNew: true,
  });
  const told = new Map<string, number>();
  let newestFrame: { readonly timeS: number; readonly atMs: number } | null = null;
  let key = '';
  practice.changes.subscribe(({ arrivedMs, sections, points }) => {
    analysed.push(now() - arrivedMs);
    const next = urgentKey(practice.view());
    if (next !== key && (sections.has('phase') || sections.has('last'))) told.set(next, arrivedMs);
    key = next;
    const timeS = points.timeS.at(-1);
    if (timeS !== undefined) newestFrame = { timeS, atMs: arrivedMs };
  });
  let seen: Pick<PracticeView, 'phase' | 'last'> | null = null;
  page.on('snapshot', ({ view }: { view: PracticeView }) => (seen = view));
  page.on('batch', ({ sequence, sections, points }: Batch) => {
    page.emit('seen', sequence);
    if (newestFrame !== null && points.timeS.at(-1) === newestFrame.timeS) {
      frames.push(now() - newestFrame.atMs);
    }
    if (seen === null) return;
    seen = { phase: sections.phase ?? seen.phase, last: sections.last ?? seen.last };
    const arrivedMs = told.get(urgentKey(seen));
    if (arrivedMs === undefined) return;
    events.push(now() - arrivedMs);
    told.delete(urgentKey(seen));
  });
  practice.start();
  return async () => {
    page.disconnect();
    await practice.stop();
    await app.close();
  };
}

const ms = (values: readonly number[], p: number): string =>
  (percentile(values, p) ?? Number.NaN).toFixed(2).padStart(8);
const row = (name: string, values: readonly number[]): string =>
  `${name.padEnd(44)}${String(values.length).padStart(7)}${ms(values, 0.5)}${ms(values, 0.95)}${ms(values, 0.99)}`;

const ends = await Promise.all(Array.from({ length: PRACTICES }, (_, i) => run(i + 1)));
await new Promise((resolve) => setTimeout(resolve, WARM_UP_MS));
for (const list of [analysed, events, frames]) list.length = 0;
await new Promise((resolve) => setTimeout(resolve, seconds * 1000));
for (const end of ends) await end();

console.log(`${PRACTICES} practices at once, ${seconds} s, simulated sensors; ms`);
console.log(
  `${''.padEnd(44)}${'n'.padStart(7)}${'median'.padStart(8)}${'p95'.padStart(8)}${'p99'.padStart(8)}`,
);
console.log(row('packet in to analysed', analysed));
console.log(row('packet in to event at the page', events), `  bound ${BOUND_MS} (p99)`);
console.log(row('packet in to drawing at the page (paced)', frames));
await benchFrames(20);
process.exit(0);
