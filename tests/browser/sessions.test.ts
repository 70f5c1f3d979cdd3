import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type SessionStore, openStore } from '../../src/sessions/store/store.ts';
import {
  type RunningService,
  SIZES,
  openBrowser,
  openPage,
  seriousFindings,
  startService,
} from './pageHarness.ts';
import { simulated } from './simulated.ts';

const recording = (name: string): string =>
  fileURLToPath(new URL(`../../recordings/${name}.zip`, import.meta.url));

let browser: Browser;
let store: SessionStore;
let service: RunningService;
beforeAll(async () => {
  browser = await openBrowser();
  store = await openStore(mkdtempSync(join(tmpdir(), 'stillcatch-sessions-')));
  const sessions = { store, problem: null, folder: store.places.root };
  service = await startService(simulated('r'), { sessions });
});
afterAll(async () => {
  await service.end();
  await store.close();
  await browser.close();
});

describe('kept sessions', () => {
  it('are imported, opened, exported, deleted and brought back', async () => {
    const { page, context, complaints } = await openPage(browser, `${service.url}#/sessions`);
    await page.getByText('No sessions yet.').waitFor();
    await page.locator('input[type=file]').setInputFiles(recording('right-mixed'));
    await page.getByText('6 of 11 rehearsals passed').waitFor();
    expect(await seriousFindings(page)).toEqual([]);

    await page.locator('.session-row a').focus();
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'All repetitions' }).waitFor();
    expect(await page.locator('.review-strip li').count()).toBe(15);
    expect(await page.locator('.repetition-table tbody tr').nth(3).innerText()).toMatch(
      /0\.6 s ✗.*Hold longer/s,
    );
    expect(await seriousFindings(page)).toEqual([]);
    const [csv] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('link', { name: 'Repetitions (.csv)' }).click(),
    ]);
    expect(csv.suggestedFilename()).toMatch(/\.csv$/);

    const form = page.getByTestId('notes-form');
    await form.getByLabel('Pain after').selectOption('2');
    await form.getByLabel('Note', { exact: true }).focus();
    await page.keyboard.type('Windy.');
    await page.route('**/notes', (route) => route.abort(), { times: 1 });
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await form.getByText('Your text is still here.').waitFor();
    expect(await form.getByLabel('Note', { exact: true }).inputValue()).toBe('Windy.');
    await page.keyboard.press('Enter');
    await form.getByText('Saved.').waitFor();
    expect((await store.list())[0]).toMatchObject({ painAfter: 2, note: 'Windy.' });

    await page.getByRole('link', { name: 'All sessions' }).click();
    await page.getByRole('button', { name: /^Delete/ }).click();
    await page.getByText('No sessions yet.').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText('6 of 11 rehearsals passed').waitFor();
    expect(complaints.filter((c) => !c.includes('ERR_FAILED'))).toEqual([]);
    await context.close();
  });

  it('say what is wrong with a file that is none', async () => {
    const { page, context } = await openPage(browser, `${service.url}#/sessions`);
    await page.locator('input[type=file]').setInputFiles({
      name: 'holiday.zip',
      mimeType: 'application/zip',
      buffer: Buffer.from('no zip at all'),
    });
    await page.getByText(/not a zip file/).waitFor();
    await context.close();
  });

  it('fit a phone', async () => {
    const { page, context } = await openPage(browser, `${service.url}#/sessions`, {
      viewport: SIZES.phone,
    });
    await page.locator('.session-row a').click();
    await page.getByRole('heading', { name: 'All repetitions' }).waitFor();
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(wide).toBeLessThanOrEqual(SIZES.phone.width);
    await context.close();
  });
});
