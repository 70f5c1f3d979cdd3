import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type RunningHub, startHub } from './hubHarness.ts';
import { type HubRows, hubRows, twoHundred } from './hubRows.ts';
import { SIZES, openBrowser, openPage, seriousFindings } from './pageHarness.ts';
import { wideLetters } from './wideLetters.ts';

let browser: Browser;
let running: RunningHub;
let rows: HubRows;
let page: Page;
const contexts: BrowserContext[] = [];

async function visit(size: keyof typeof SIZES, options = {}): Promise<Page> {
  const opened = await openPage(browser, 'about:blank', { viewport: SIZES[size], ...options });
  contexts.push(opened.context);
  await opened.context.addCookies([await rows.cookieOf('carla')]);
  await opened.page.goto(`${running.url}/#/`);
  await opened.page.locator('.student-line').first().waitFor();
  return opened.page;
}

beforeAll(async () => {
  browser = await openBrowser();
  running = await startHub();
  rows = await hubRows(running);
  await twoHundred(rows);
});
afterAll(async () => {
  for (const context of contexts) await context.close();
  await running.end();
  await browser.close();
});

/** Lines that stand on the screen with all of their height. */
const linesSeen = (of: Page): Promise<number> =>
  of
    .locator('.student-line')
    .evaluateAll(
      (lines) => lines.filter((l) => l.getBoundingClientRect().bottom <= innerHeight).length,
    );
const tooWide = (of: Page): Promise<number> =>
  of.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
const inGroup = (group: string) => page.locator(`[data-group="${group}"] .student-line`);

describe('a list of 200 students', () => {
  it('shows twenty lines on a laptop, also in letters that are 15 % wider', async () => {
    page = await visit('laptop');
    await page.getByText('25 of 200 students need you.').waitFor();
    expect(await linesSeen(page)).toBeGreaterThanOrEqual(20);
    const heights = await page
      .locator('.student-line')
      .evaluateAll((lines) => lines.map((l) => Math.round(l.getBoundingClientRect().height)));
    expect(new Set(heights).size).toBe(1);
    expect(await tooWide(page)).toBeLessThanOrEqual(0);
    expect(await seriousFindings(page)).toEqual([]);
    await wideLetters(page, true);
    expect(await linesSeen(page)).toBeGreaterThanOrEqual(20);
    expect(await tooWide(page)).toBeLessThanOrEqual(0);
    await wideLetters(page, false);
  });

  it('has those who need a coach first, small things and all well folded with their counts', async () => {
    expect(await inGroup('coach').count()).toBe(25);
    expect(await inGroup('small').count()).toBe(0);
    const titles = await page.locator('.need-group summary').allInnerTexts();
    expect(titles.map((text) => text.replace(/\s+/g, ' ').trim())).toEqual([
      'Need you 25',
      'Small things 150',
      'All well 25',
    ]);
    expect(await inGroup('coach').first().innerText()).toMatch(/Pain[^]*Rated pain 6 of 10/);
    await page.locator('[data-group="small"] summary').click();
    await inGroup('small').first().waitFor();
    await page.locator('[data-group="small"] summary').click();
  });

  it('is walked by keys: a line opens its student, or the very session that it names', async () => {
    const first = inGroup('coach').first();
    const id = await first.getAttribute('data-student');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('o');
    await expect.poll(() => page.url()).toContain(`#/sessions/${id}x0`);
    await page.goBack();
    await first.waitFor();
    await expect
      .poll(async () => {
        await page.keyboard.press('j');
        return page.locator('.student-line h3 a:focus').count();
      })
      .toBe(1);
  });

  it('marks calm sessions together, says how many, and takes it back', async () => {
    const mark = page.getByRole('button', { name: /^Mark \d+ calm sessions/ });
    const before = await mark.innerText();
    await mark.click();
    await page.getByRole('status').getByText('125 sessions marked as reviewed.').waitFor();
    await mark.waitFor({ state: 'detached' });
    expect(await inGroup('coach').count()).toBe(25);
    await page.getByRole('button', { name: 'Undo' }).click();
    await mark.waitFor();
    expect(await mark.innerText()).toBe(before);
  });

  it('keeps pain first when its session is reviewed; closing it takes a reason and can be undone', async () => {
    const first = inGroup('coach').first();
    const id = (await first.getAttribute('data-student')) ?? '';
    await first.locator('.reason a').click();
    await page.getByRole('button', { name: /Mark as reviewed/ }).click();
    await page.locator('.seen-yes').waitFor();
    await page.locator('.review-bar a').click();
    await page.locator('.needs').getByText('Rated pain 6 of 10.').waitFor();
    await page.getByRole('button', { name: 'Close with a reason' }).click();
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    await page.locator('dialog textarea:invalid').waitFor();
    await page.locator('dialog textarea').fill('Saw a physiotherapist: nothing found.');
    expect(await seriousFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    await page.getByRole('heading', { name: 'Closed pain' }).waitFor();
    expect(await page.locator('.needs .need-pain').count()).toBe(0);
    await page.getByRole('button', { name: /^Reopen/ }).click();
    await page.locator('.needs .need-pain').waitFor();
    expect(page.url()).toContain(id);
  });

  it('quotes a question and leads to its answer', async () => {
    await page.goto(`${running.url}/#/?need=unanswered`);
    await page.reload();
    const line = inGroup('coach').first();
    expect(await line.innerText()).toContain('“The hold feels long');
    await line.getByRole('link', { name: /^Reply/ }).click();
    await expect.poll(() => page.url()).toContain('answer=note');
  });

  it('wraps on a phone without leaving its width', async () => {
    const phone = await visit('phone');
    expect(await tooWide(phone)).toBeLessThanOrEqual(0);
    expect(await seriousFindings(phone)).toEqual([]);
  });
});
