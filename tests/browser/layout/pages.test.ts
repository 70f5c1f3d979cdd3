import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { NOTHING_DONE } from '../../../src/coaching/notCounted.ts';
import { planFile, planService } from '../../../src/main/planFile.ts';
import { type SessionStore, openStore } from '../../../src/sessions/store/store.ts';
import { NOBODY_AROUND } from '../../streaming/deskFixtures.ts';
import { addHistory } from '../longHistory.ts';
import { type RunningService, openBrowser, openPage, startService } from '../pageHarness.ts';
import { simulated } from '../simulated.ts';
import { findings } from './findings.ts';
import { PLACES } from './places.ts';
import { installTypefaces } from './typefaces.ts';

let browser: Browser;
let store: SessionStore;
let service: RunningService;
let session: string;
beforeAll(async () => {
  browser = await openBrowser();
  store = await openStore(mkdtempSync(join(tmpdir(), 'stillcatch-layout-')));
  const recording = new URL('../../../recordings/right-mixed.zip', import.meta.url);
  session = await store.importSession(fileURLToPath(recording));
  await addHistory(store, 6, Date.now() - 86_400_000);
  const file = planFile(join(store.places.root, 'plans.json'), Date.now);
  service = await startService(simulated('idle:600'), {
    sessions: { store, problem: null, folder: store.places.root },
    plans: planService({
      file,
      week: async () => ({ ...NOTHING_DONE, sessions: 2, repetitions: 34 }),
    }),
    desk: { view: NOBODY_AROUND, obey: () => null },
  });
});
afterAll(async () => {
  await service.end();
  await store.close();
  await browser.close();
});

const ROUTES = ['today', 'sessions', 'progress', 'plan', 'coach', 'sensors', 'safety', 'help'];

/** All that the page fetches has come. */
const settled = (page: Page): Promise<unknown> =>
  page.waitForFunction(() => {
    const main = document.querySelector('main');
    if (main === null || main.querySelector('h1') === null) return false;
    return !/ …$/m.test(main.innerText);
  });

describe.each(['en', 'de'] as const)('the pages in %s', (lang) => {
  it.each(PLACES)('are whole on $name in any typeface', async ({ width, height, scale }) => {
    const { page, context } = await openPage(browser, `${service.url}?lang=${lang}#/today`, {
      viewport: { width, height },
      deviceScaleFactor: scale,
    });
    await settled(page);
    await installTypefaces(page);
    const found: string[] = [];
    const look = async (name: string): Promise<void> => {
      found.push(...(await findings(page)).map((one) => `${name}, ${one}`));
    };
    for (const route of [...ROUTES, `sessions/${session}`, `sessions/${session}?repetition=2`]) {
      await page.goto(`${service.url}?lang=${lang}#/${route}`);
      await settled(page);
      await look(route);
    }
    await page.goto(`${service.url}?lang=${lang}#/plan`);
    await page.locator('.plan-page > .row button').click();
    await page.locator('.plan-form').waitFor();
    await look('plan, writing');
    await page.locator('summary').first().click();
    await look('the menu');
    expect(found).toEqual([]);
    await context.close();
  });
});
