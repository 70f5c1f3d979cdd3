/**
 * Memory of service and page over a long practice, played fast: `tsx tests/bench/memory.ts [minutes] [times as fast]`.
 * In the end: was anything dropped on the way from the source to the recording, or from the service to the page.
 * The service has seen the given minutes of session time; the page has drawn as long as the bench ran.
 */
import { fork } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { openBrowser, openPage } from '../browser/pageHarness.ts';

interface Told {
  readonly url: string;
  readonly sessionS: number;
  readonly rehearsals: number;
  readonly heapMb: number;
}

interface Counts {
  readonly samples: number;
  readonly events: number;
}

const minutes = Number(process.argv[2] ?? 30);
const speed = process.argv[3] ?? '30';
const LOOKS = 6;

const service = fork(fileURLToPath(new URL('memoryService.ts', import.meta.url)), [speed], {
  execArgv: ['--expose-gc', '--import', 'tsx'],
});

async function ask(): Promise<Told> {
  service.send('tell');
  const [told] = (await once(service, 'message')) as [Told];
  return told;
}

const { url } = await ask();
const browser = await openBrowser();
const { page, context } = await openPage(browser, 'about:blank');
/** What came to the page: each batch has the next number; a snapshot after the first means that it fell behind. */
const came = { batches: 0, missing: 0, snapshots: 0, last: 0 };
page.on('websocket', (socket) =>
  socket.on('framereceived', ({ payload }) => {
    const [, kind, sequence] =
      /^42\["(batch|snapshot)",\{"sequence":(\d+)/.exec(String(payload)) ?? [];
    if (kind === undefined) return;
    if (kind === 'snapshot') came.snapshots += 1;
    else {
      came.batches += 1;
      came.missing += Math.max(0, Number(sequence) - came.last - 1);
    }
    came.last = Number(sequence);
  }),
);
await page.goto(url);
const devtools = await context.newCDPSession(page);

async function pageMb(): Promise<number> {
  await devtools.send('HeapProfiler.collectGarbage');
  return (await devtools.send('Runtime.getHeapUsage')).usedSize / 1e6;
}

/** Waits until the practice is so old. */
async function at(sessionS: number): Promise<Told> {
  for (;;) {
    const told = await ask();
    if (told.sessionS >= sessionS) return told;
    await page.waitForTimeout(1000);
  }
}

console.log(' session min  rehearsals  service MB  page MB   (live heap after collection)');
const looks: { readonly service: number; readonly page: number }[] = [];
for (let look = 1; look <= LOOKS; look++) {
  const told = await at((look * minutes * 60) / LOOKS);
  looks.push({ service: told.heapMb, page: await pageMb() });
  const cells = [told.sessionS / 60, told.rehearsals, told.heapMb, looks.at(-1)?.page ?? 0];
  console.log(cells.map((n) => n.toFixed(1).padStart(12)).join(''));
}
const growth = (of: 'service' | 'page'): string =>
  ((looks.at(-1)?.[of] ?? 0) - (looks[0]?.[of] ?? 0)).toFixed(1);
console.log(
  `growth since the first look: service ${growth('service')} MB, page ${growth('page')} MB (bound 30 MB in 60 min)`,
);
await browser.close();
service.send('end');
const [{ made, kept }] = (await once(service, 'message')) as [{ made: Counts; kept: Counts }];
console.log(
  `samples made ${made.samples}, in the recording ${kept.samples}: ${made.samples - kept.samples} dropped; events made ${made.events}, in the recording ${kept.events}: ${made.events - kept.events} dropped`,
);
console.log(
  `page: ${came.batches} batches came, ${came.missing} missing, ${came.snapshots - 1} times behind`,
);
service.kill();
process.exit(0);
