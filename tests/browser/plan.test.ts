import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { NOTHING_DONE } from '../../src/coaching/notCounted.ts';
import { planFile, planService } from '../../src/main/planFile.ts';
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
const file = planFile(
  join(mkdtempSync(join(tmpdir(), 'stillcatch-plan-')), 'plans.json'),
  Date.now,
);
const own = planService({
  file,
  week: async () => ({ ...NOTHING_DONE, sessions: 2, repetitions: 34 }),
});
let full = false;
let browser: Browser;
let service: RunningService;
beforeAll(async () => {
  browser = await openBrowser();
  const plans = {
    ...own,
    write: (plan: Parameters<typeof own.write>[0]) => {
      if (full) throw new Error('no space left on the disk.');
      own.write(plan);
    },
  };
  service = await startService(simulated('r'), { plans });
});
afterAll(async () => {
  await service.end();
  await browser.close();
});

describe('the plan', () => {
  it('is read and changed by keyboard; what is refused stays as it was typed', async () => {
    const { page, context } = await openPage(browser, `${service.url}#/plan`);
    const edit = page.getByRole('button', { name: 'Edit' });
    await edit.waitFor();
    expect(await page.locator('main input, main textarea').count()).toBe(0);
    expect(await page.getByText('coaching choice, not a published norm').count()).toBeGreaterThan(
      7,
    );
    expect(await page.locator('.plan-cards svg').count()).toBe(7);
    expect(await seriousFindings(page)).toEqual([]);
    if (SHOTS) await page.screenshot({ path: `${SHOTS}/plan-laptop.png`, fullPage: true });

    await edit.press('Enter');
    await page.getByRole('heading', { name: 'Change plan' }).waitFor();
    expect(await page.locator('.plan-sheet').count()).toBe(0);
    expect(await seriousFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'Back without saving' }).press('Enter');
    await edit.press('Enter');
    const rehearsals = page.getByLabel('Rehearsals', { exact: true });
    const save = page.getByRole('button', { name: 'Save plan' });
    await rehearsals.focus();
    await page.keyboard.press('Control+A');
    await page.keyboard.type('many');
    await page.getByText('Rehearsals: enter a number from 1 to 20.').waitFor();
    expect(await rehearsals.inputValue()).toBe('many');
    expect(await page.locator('main').innerText()).not.toMatch(/ratio\.|volume\.|targets\./);
    expect(await save.isDisabled()).toBe(true);
    await page.keyboard.press('Control+A');
    await page.keyboard.type('3');
    await page.getByText('Mix: 3 to 1, was 2 to 1.').waitFor();

    full = true;
    await save.focus();
    await page.keyboard.press('Enter');
    await page.getByText(/could not be saved: no space left/).waitFor();
    expect(await rehearsals.inputValue()).toBe('3');
    full = false;
    await page.keyboard.press('Enter');
    await page.getByText('You wrote this plan.').waitFor();
    await page.getByText('3 rehearsals, then one ball').waitFor();
    await page.getByText('Saved.').waitFor();
    expect(await page.locator('main input, main textarea').count()).toBe(0);
    await edit.press('Enter');
    await page.getByRole('heading', { name: /^Version 1, / }).waitFor();
    expect(own.own()).toHaveLength(1);

    await page.goto(`${service.url}#/today`);
    await page.getByText('3 rehearsals, then a ball.').waitFor();
    await page.getByText('This week: 34 of at most 200 repetitions.').waitFor();
    await context.close();
  });

  it('fits a phone, in the dark too', async () => {
    const { page, context } = await openPage(browser, `${service.url}#/plan`, {
      viewport: SIZES.phone,
      colorScheme: 'dark',
      hasTouch: true,
    });
    await page.getByRole('button', { name: 'Edit' }).tap();
    await page.getByRole('heading', { name: 'Change plan' }).waitFor();
    const width = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(width).toBeLessThanOrEqual(SIZES.phone.width);
    expect(await seriousFindings(page)).toEqual([]);
    if (SHOTS) await page.screenshot({ path: `${SHOTS}/plan-phone.png`, fullPage: true });
    await context.close();
  });
});
