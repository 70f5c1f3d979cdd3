import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { makeDemoPeople } from '../../src/hub/demo/people.ts';
import { percentile } from '../../src/math/stats.ts';
import { zipSession } from '../../src/sessions/write/zipSession.ts';
import type { Me } from '../../src/streaming/hubContract/people.ts';
import type { HubSession } from '../../src/streaming/hubContract/review.ts';
import { startHub } from '../browser/hubHarness.ts';
import { openBrowser, openPage } from '../browser/pageHarness.ts';
import { writeSimulated } from '../sessions/simulated.ts';

const LOADS = 7;
const REPETITIONS = 201;

/** A simulated session of half an hour, as a zip. */
async function longSession(folder: string): Promise<Uint8Array<ArrayBuffer>> {
  const session = join(folder, 'session');
  await writeSimulated(session, { seed: 5, script: 'r r b '.repeat(REPETITIONS / 3) });
  await zipSession(session, join(folder, 'session.zip'));
  return new Uint8Array(await readFile(join(folder, 'session.zip')));
}

/** When the strip stood, and when the page was last busy for over 50 ms without a pause of half a second before, ms. */
async function timesOf(page: Page, address: string): Promise<{ strip: number; ready: number }> {
  await page.addInitScript(() => {
    const busy: { from: number; to: number }[] = [];
    Object.assign(window, { busy });
    new PerformanceObserver((list) =>
      list
        .getEntries()
        .forEach((e) => busy.push({ from: e.startTime, to: e.startTime + e.duration })),
    ).observe({ type: 'longtask', buffered: true });
  });
  await page.goto('about:blank');
  await page.goto(address);
  await page
    .locator('.review-strip button')
    .nth(REPETITIONS - 2)
    .waitFor();
  const strip = await page.evaluate(() => performance.now());
  await page.locator('.multiples svg').first().waitFor();
  await page.waitForTimeout(1000);
  const ready = await page.evaluate(
    (from) =>
      (window as unknown as { busy: { from: number; to: number }[] }).busy.reduce(
        (end, task) => (task.from - end < 500 ? Math.max(end, task.to) : end),
        from,
      ),
    strip,
  );
  return { strip, ready };
}

/** How long a coach waits for the page of a session with 200 repetitions, in Chromium, the answer not kept before. */
export async function benchSessionPage(): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'stillcatch-bench-'));
  const running = await startHub();
  const browser = await openBrowser();
  try {
    const [coach] = await makeDemoPeople(running.context);
    const signedIn = await fetch(`${running.url}/api/login`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ login: coach?.login, password: coach?.password }),
    });
    const cookie = signedIn.headers.getSetCookie()[0]?.split(';')[0] ?? '';
    const { csrf } = (await signedIn.json()) as Me;
    const came = await fetch(`${running.url}/api/students/demo-nele/import`, {
      method: 'POST',
      headers: { cookie, 'x-csrf-token': csrf, 'content-type': 'application/zip' },
      body: await longSession(folder),
    });
    const { id } = (await came.json()) as { id: string };
    const session = async () =>
      (await (
        await fetch(`${running.url}/api/sessions/${id}`, { headers: { cookie } })
      ).json()) as HubSession;
    while ((await session()).analysing) await new Promise((r) => setTimeout(r, 500));
    const opened = await openPage(browser, running.url);
    const [name = '', value = ''] = cookie.split('=');
    await opened.context.addCookies([{ name, value, url: running.url }]);
    const times: { strip: number; ready: number }[] = [];
    for (let i = 0; i < LOADS; i++)
      times.push(await timesOf(opened.page, `${running.url}/#/sessions/${id}`));
    const shown = (of: (t: (typeof times)[number]) => number): string =>
      [0.5, 0.95].map((p) => (percentile(times.map(of), p) ?? 0).toFixed(0)).join(' / ');
    const count = (await session()).analysis?.repetitions.length ?? 0;
    console.log(
      `session page, ${count} repetitions, Chromium, ${LOADS} loads, median / 95th: strip seen ${shown((t) => t.strip)} ms, interactive ${shown((t) => t.ready)} ms (bound 1000)`,
    );
  } finally {
    await browser.close();
    await running.end();
    await rm(folder, { recursive: true, force: true });
  }
}
