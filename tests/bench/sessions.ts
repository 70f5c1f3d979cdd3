/**
 * Pages of kept sessions in a real browser: a session of 200 repetitions, a history of 500 sessions.
 * `tsx tests/bench/sessions.ts`. Service and browser share this computer.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import type { Browser, Page } from 'playwright-core';
import { median, percentile } from '../../src/math/stats.ts';
import { openStore } from '../../src/sessions/store/store.ts';
import { addHistory } from '../browser/longHistory.ts';
import { openBrowser, openPage, startService } from '../browser/pageHarness.ts';
import { simulated } from '../browser/simulated.ts';
import { writeSimulated } from '../sessions/simulated.ts';

const REPETITIONS = 200;
const SESSIONS = 500;
const ROUNDS = 5;
const BOUND = { page: 1000, history: 300 };

const scratch = mkdtempSync(join(tmpdir(), 'stillcatch-bench-'));
const store = await openStore(join(scratch, 'data'));
const forgetCache = (): void =>
  rmSync(join(store.places.root, 'cache'), { recursive: true, force: true });

/** ms after navigation began, at the frame in which `ready` first holds. */
const timeOf = (page: Page, ready: string): Promise<number> =>
  page.evaluate(`new Promise((done) => {
    const look = () => (${ready})
      ? requestAnimationFrame(() => setTimeout(() => done(performance.now())))
      : requestAnimationFrame(look);
    look();
  })`);

const countIs = (selector: string, n: number): string =>
  `document.querySelectorAll(${JSON.stringify(selector)}).length === ${n}`;

async function times(
  browser: Browser,
  url: string,
  readies: readonly string[],
  before?: () => void,
) {
  const rounds: number[][] = readies.map(() => []);
  for (let round = 0; round < ROUNDS; round++) {
    before?.();
    const { page, context } = await openPage(browser, 'about:blank');
    await page.goto(url);
    for (const [i, ready] of readies.entries()) rounds[i]!.push(await timeOf(page, ready));
    await context.close();
  }
  return rounds;
}

function tell(what: string, ms: readonly number[], bound?: number): void {
  const [middle, most] = [median(ms) ?? NaN, Math.max(...ms)];
  const beside =
    bound === undefined ? '' : `   bound ${bound}: ${most <= bound ? 'met' : 'NOT met'}`;
  console.log(
    `${what.padEnd(66)}${middle.toFixed(0).padStart(7)}${most.toFixed(0).padStart(7)}${beside}`,
  );
}

/** ms from a press until two frames later, after the page has done what it does. */
const press = (page: Page, act: string): Promise<number> =>
  page.evaluate(
    `new Promise((done) => { const from = performance.now(); ${act};
      requestAnimationFrame(() => requestAnimationFrame(() => done(performance.now() - from))); })`,
  );

async function benchSession(browser: Browser, url: string): Promise<void> {
  const strip = countIs('.review-strip button', REPETITIONS);
  const tiles = countIs('.multiples li', REPETITIONS);
  const [coldStrip, coldTiles] = await times(browser, url, [strip, tiles], forgetCache);
  const [warmStrip, warmTiles] = await times(browser, url, [strip, tiles]);
  tell(
    `${REPETITIONS} repetitions, interactive (header, strip, table), nothing prepared`,
    coldStrip!,
    BOUND.page,
  );
  tell('  all small multiples drawn, nothing prepared', coldTiles!);
  tell(`${REPETITIONS} repetitions, interactive, prepared`, warmStrip!, BOUND.page);
  tell('  all small multiples drawn, prepared', warmTiles!, BOUND.page);
  const { page, context } = await openPage(browser, url);
  await timeOf(page, tiles);
  const filter = `document.querySelectorAll('.review-legend button')[2].click()`;
  const filters: number[] = [];
  for (let i = 0; i < ROUNDS; i++) filters.push(await press(page, filter));
  tell('  a filter chosen', filters);
  await page.evaluate(`document.querySelector('.multiples button').click()`);
  await timeOf(page, `document.querySelector('.curves-plot') !== null`);
  const scrubs: number[] = [];
  for (let i = 0; i < ROUNDS; i++)
    scrubs.push(
      await press(page, `document.querySelectorAll('.event-buttons button')[${i % 3}].click()`),
    );
  tell('  one repetition open: cursor moved (curves and both figures)', scrubs);
  await context.close();
}

async function benchHistory(browser: Browser, base: string): Promise<void> {
  const [list] = await times(browser, `${base}#/sessions`, [countIs('.session-row', SESSIONS)]);
  tell(`history of ${SESSIONS} sessions, list drawn`, list!, BOUND.history);
  const [progress] = await times(browser, `${base}#/progress`, [
    `document.querySelectorAll('.progress-chart').length >= 7`,
  ]);
  tell(`progress over ${SESSIONS} sessions, all charts drawn`, progress!, BOUND.history);
}

await writeSimulated(join(scratch, 'long'), {
  seed: 7,
  script: Array.from({ length: Math.floor(REPETITIONS / 3) }, () => 'r r b').join(' ') + ' r r',
});
const id = await store.importSession(join(scratch, 'long'));
const sessions = { store, problem: null, folder: store.places.root };
const service = await startService(simulated('r'), { sessions });
const browser = await openBrowser();
console.log(''.padEnd(66) + ' median   most, ms (of ' + ROUNDS + ')');
await benchSession(browser, `${service.url}#/sessions/${id}`);

forgetCache();
const delay = monitorEventLoopDelay({ resolution: 1 });
delay.enable();
await fetch(`${service.url}api/sessions`);
await new Promise((done) => setTimeout(done, 5000));
delay.disable();
tell('service meanwhile, preparing in the background: longest pause', [delay.max / 1e6]);
tell('  95th percentile of its pauses', [percentile([delay.percentile(95) / 1e6], 0.5) ?? NaN]);

await addHistory(store, SESSIONS - 1, Date.now());
await benchHistory(browser, service.url);
await browser.close();
await service.end();
await store.close();
rmSync(scratch, { recursive: true, force: true });
process.exit(0);
