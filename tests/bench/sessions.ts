/**
 * Pages of kept sessions in a real browser: a session of 200 repetitions, a history of 500 sessions.
 * `tsx tests/bench/sessions.ts`. Service and browser share this computer.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import type { Browser, Page } from 'playwright-core';
import { median } from '../../src/math/stats.ts';
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

async function times(browser: Browser, url: string, readies: readonly string[]) {
  const rounds: number[][] = readies.map(() => []);
  for (let round = 0; round < ROUNDS; round++) {
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

const strip = countIs('.review-strip button', REPETITIONS);
const tiles = countIs('.multiples li', REPETITIONS);

/** Once, with a service that has seen nothing of the session. */
async function benchCold(browser: Browser, url: string): Promise<void> {
  const pauses = monitorEventLoopDelay({ resolution: 1 });
  pauses.enable();
  const { page, context } = await openPage(browser, url);
  const [interactive, drawn] = [await timeOf(page, strip), await timeOf(page, tiles)];
  pauses.disable();
  await context.close();
  tell(
    `${REPETITIONS} repetitions, nothing prepared: header, strip, table`,
    [interactive],
    BOUND.page,
  );
  tell('  all small multiples drawn', [drawn]);
  tell('  longest pause of the service meanwhile', [pauses.max / 1e6]);
}

async function benchSession(browser: Browser, url: string): Promise<void> {
  const [warmStrip, warmTiles] = await times(browser, url, [strip, tiles]);
  tell(`${REPETITIONS} repetitions, prepared: header, strip, table`, warmStrip!, BOUND.page);
  tell('  all small multiples drawn', warmTiles!, BOUND.page);
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

/** ms from going to another page of the opened program until `ready`. */
async function within(
  browser: Browser,
  base: string,
  hash: string,
  ready: string,
): Promise<number[]> {
  const { page, context } = await openPage(browser, `${base}#/safety`);
  await timeOf(page, `document.querySelector('main.safety, #main') !== null`);
  const rounds: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const from = await page.evaluate<number>(`(location.hash = '#/safety', performance.now())`);
    await timeOf(page, `performance.now() > ${from} + 300 && location.hash === '#/safety'`);
    const begun = await page.evaluate<number>(
      `(location.hash = ${JSON.stringify(hash)}, performance.now())`,
    );
    rounds.push((await timeOf(page, ready)) - begun);
  }
  await context.close();
  return rounds;
}

async function benchHistory(browser: Browser, base: string): Promise<void> {
  const rows = countIs('.session-row', SESSIONS);
  const first = `document.querySelectorAll('.session-row').length > 0`;
  const charts = `document.querySelectorAll('.progress-chart').length >= 7`;
  const [bare] = await times(browser, `${base}#/safety`, [countIs('main', 1)]);
  tell('for comparison: the program opened anew, a page without data', bare!);
  const [firstRows, allRows] = await times(browser, `${base}#/sessions`, [first, rows]);
  tell(`history of ${SESSIONS} sessions, program opened anew: first rows`, firstRows!);
  tell('  all rows', allRows!);
  tell(
    '  gone to within the program: first rows',
    await within(browser, base, '#/sessions', first),
    BOUND.history,
  );
  tell(
    '  gone to within the program: all rows',
    await within(browser, base, '#/sessions', rows),
    BOUND.history,
  );
  const [progress] = await times(browser, `${base}#/progress`, [charts]);
  tell(`progress over ${SESSIONS} sessions, program opened anew`, progress!);
  tell(
    '  gone to within the program: all charts',
    await within(browser, base, '#/progress', charts),
    BOUND.history,
  );
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
await benchCold(browser, `${service.url}#/sessions/${id}`);
await benchSession(browser, `${service.url}#/sessions/${id}`);
await addHistory(store, SESSIONS - 1, Date.now());
await benchHistory(browser, service.url);
await browser.close();
await service.end();
await store.close();
rmSync(scratch, { recursive: true, force: true });
process.exit(0);
