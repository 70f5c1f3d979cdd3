/**
 * Memory of service and page over a long practice, played fast: `tsx tests/bench/memory.ts [minutes] [times as fast]`.
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
const { page, context } = await openPage(browser, url);
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
service.kill();
process.exit(0);
