import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { weekCounts } from '../../src/coaching/notCounted.ts';
import type { Spread } from '../../src/coaching/pools.ts';
import { planFile, planService } from '../../src/main/planFile.ts';
import { openDatabase } from '../../src/sessions/store/driver.ts';
import type { MeasureSpreads } from '../../src/sessions/store/spreads.ts';
import { type SessionStore, openStore } from '../../src/sessions/store/store.ts';
import type { IndexTables } from '../../src/sessions/store/tables.ts';
import { countedSession } from '../../src/streaming/sessionsViews.ts';
import { addHistory } from './longHistory.ts';
import { type RunningService, SIZES, openBrowser, openPage, startService } from './pageHarness.ts';
import { simulated } from './simulated.ts';

const SHOTS = process.env['SHOTS'];
const DAY_MS = 86_400_000;

let browser: Browser;
let store: SessionStore;
let service: RunningService;
let newest: string;

/** The recorded session as a person's own, after three whose hold was shorter and more alike. */
async function tellThem(waiting: boolean): Promise<void> {
  const db = openDatabase<IndexTables>(store.places.index);
  const own = { simulated: 0, startedMs: Date.now() - 3_600_000 };
  const state = { analysed: waiting ? 0 : 1, note: 'Slow at the top' };
  await db
    .updateTable('session')
    .set({ ...own, ...state })
    .where('id', '=', newest)
    .execute();
  const rows = await db.selectFrom('session').select(['id', 'spreads']).execute();
  for (const { id, spreads } of rows.filter((row) => row.id !== newest)) {
    const all = JSON.parse(spreads) as MeasureSpreads;
    const hold: Spread = { count: 12, low: 0.38, median: 0.4, high: 0.42 };
    const changed = { ...all, rehearsals: { ...all.rehearsals, holdS: hold } };
    await db
      .updateTable('session')
      .set({ spreads: JSON.stringify(changed) })
      .where('id', '=', id)
      .execute();
  }
  await db.destroy();
}

beforeAll(async () => {
  browser = await openBrowser();
  store = await openStore(mkdtempSync(join(tmpdir(), 'stillcatch-today-')));
  const recording = new URL('../../recordings/right-mixed.zip', import.meta.url);
  newest = await store.importSession(fileURLToPath(recording));
  await addHistory(store, 3, Date.now() - DAY_MS);
  await tellThem(false);
  const file = planFile(join(store.places.root, 'plans.json'), Date.now);
  service = await startService(simulated('idle:600'), {
    sessions: { store, problem: null, folder: store.places.root },
    plans: planService({
      file,
      week: async () => weekCounts((await store.list()).map(countedSession), Date.now()),
    }),
  });
});
afterAll(async () => {
  await service.end();
  await store.close();
  await browser.close();
});

const textOf = (page: Page): Promise<string> => page.locator('.today-start').innerText();

describe.each(['en', 'de'] as const)('Today in %s', (language) => {
  it.each(['laptop', 'phone'] as const)(
    'on a %s says what changed and what to do',
    async (size) => {
      const { page, context, complaints } = await openPage(
        browser,
        `${service.url}?lang=${language}#/today`,
        { viewport: SIZES[size] },
      );
      await page.getByTestId('since-last').waitFor();
      const text = await textOf(page);
      expect(text).toMatch(language === 'en' ? /hold at the top/i : /Halten/i);
      if (SHOTS) await page.screenshot({ path: `${SHOTS}/today-${language}-${size}.png` });
      const { width, height } = await page.evaluate(() => {
        const { scrollWidth, scrollHeight } = document.documentElement;
        return { width: scrollWidth, height: scrollHeight };
      });
      expect(width).toBeLessThanOrEqual(SIZES[size].width);
      if (size === 'laptop') expect(height).toBeLessThanOrEqual(SIZES.laptop.height);
      expect(complaints).toEqual([]);
      await context.close();
    },
  );
});

it('the numbers of today are those of the progress', async () => {
  const { page, context } = await openPage(browser, `${service.url}?lang=en#/today`);
  const text = await page.getByTestId('since-last').innerText();
  const [, now, before] = /hold at the top ([\d.]+ s), before ([\d.]+ s)/.exec(text) ?? [];
  expect(before).toBe('0.4 s');
  await page.goto(`${service.url}?lang=en#/progress`);
  const panel = page.locator('.progress-panel').filter({ hasText: 'hold at the top' });
  await expect.poll(() => panel.locator('.reading').innerText()).toContain(now!);
  await context.close();
});

it('a session that is being analysed is said so on every page, and its numbers come by themselves', async () => {
  await tellThem(true);
  const { page, context } = await openPage(browser, `${service.url}?lang=en#/today`);
  await page.getByText('It is being analysed.').waitFor();
  const text = await textOf(page);
  expect(text).not.toMatch(/\b0 (of|repetitions)/);
  expect(text).toContain('1 session is being analysed and is not counted yet.');
  for (const place of ['plan', 'progress', 'sessions']) {
    await page.goto(`${service.url}?lang=en#/${place}`);
    await page.getByText('being analysed').first().waitFor();
  }
  await page.goto(`${service.url}?lang=en#/today`);
  await page.getByText('It is being analysed.').waitFor();
  await tellThem(false);
  await page.getByText(/Last time: .*repetitions\./).waitFor();
  await context.close();
});
