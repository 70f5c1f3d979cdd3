import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type RunningHub, startHub } from './hubHarness.ts';
import {
  type RunningService,
  SIZES,
  openBrowser,
  openPage,
  seriousFindings,
  startService,
} from './pageHarness.ts';
import { simulated } from './simulated.ts';

const SHOTS = process.env['SHOTS'];
let browser: Browser;
let service: RunningService;
let hub: RunningHub;
beforeAll(async () => {
  browser = await openBrowser();
  service = await startService(simulated('r'));
  hub = await startHub();
});
afterAll(async () => {
  await hub.end();
  await service.end();
  await browser.close();
});

describe('the help', () => {
  it('is found by words and walked by keyboard', async () => {
    const { page, context, complaints } = await openPage(browser, `${service.url}#/help`);
    const topics = page.locator('.help-topic');
    await page.getByRole('heading', { name: 'Help', level: 1 }).waitFor();
    const all = await topics.count();
    expect(all).toBeGreaterThan(10);
    expect(await page.locator('.help-topic svg').count()).toBeGreaterThan(8);
    expect(await seriousFindings(page)).toEqual([]);

    await page.getByRole('searchbox').fill('wooden knocks');
    await page.getByText('1 topic', { exact: true }).waitFor();
    expect(await topics.count()).toBe(1);
    await page.getByRole('searchbox').fill('nobody wrote this');
    await page.getByText('No topic has all of these words.').waitFor();
    await page.getByRole('searchbox').fill('');

    const last = page.getByRole('navigation', { name: 'Topics' }).getByRole('button').last();
    const title = (await last.innerText()).trim();
    await last.focus();
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe(title);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it('stands in German, and no page is wider than its screen', async () => {
    for (const [name, viewport] of Object.entries(SIZES)) {
      const options = { viewport, locale: 'de-DE' };
      const { page, context } = await openPage(browser, `${service.url}#/help`, options);
      await page.getByRole('heading', { name: 'Hilfe', level: 1 }).waitFor();
      const wide = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect(wide).toBe(0);
      if (SHOTS) await page.screenshot({ path: `${SHOTS}/help-${name}.png`, fullPage: true });
      await context.close();
    }
  });

  it('is printed whole, without what only a screen needs', async () => {
    const { page, context } = await openPage(browser, `${service.url}#/help`);
    await page.getByRole('searchbox').waitFor();
    await page.emulateMedia({ media: 'print' });
    expect(await page.getByRole('searchbox').isVisible()).toBe(false);
    expect(await page.locator('header.top').isVisible()).toBe(false);
    expect(await page.locator('.help-topic').last().isVisible()).toBe(true);
    if (SHOTS) await page.pdf({ path: `${SHOTS}/help.pdf`, format: 'A4' });
    await context.close();
  });

  it('of the hub is there before anybody signs in, and speaks of the hub', async () => {
    const { page, context } = await openPage(browser, `${hub.url}/#/help`);
    await page.getByRole('heading', { name: 'Who needs me', level: 2 }).waitFor();
    expect(await seriousFindings(page)).toEqual([]);
    if (SHOTS) await page.screenshot({ path: `${SHOTS}/help-hub.png`, fullPage: true });
    await context.close();
  });
});
