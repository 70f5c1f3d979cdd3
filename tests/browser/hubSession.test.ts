import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { filmed } from './filmed.ts';
import { type RunningHub, startHub } from './hubHarness.ts';
import { type HubRows, demoPractice, hubRows } from './hubRows.ts';
import { SIZES, openBrowser, openPage, seriousFindings } from './pageHarness.ts';
import { wideLetters } from './wideLetters.ts';

let browser: Browser;
let running: RunningHub;
let rows: HubRows;
let page: Page;
let sessionId: string;
const contexts: BrowserContext[] = [];

async function visit(size: keyof typeof SIZES, query = ''): Promise<Page> {
  const opened = await openPage(browser, 'about:blank', { viewport: SIZES[size] });
  contexts.push(opened.context);
  await opened.context.addCookies([await rows.cookieOf('carla')]);
  await opened.page.goto(`${running.url}/#/sessions/${sessionId}${query}`);
  await opened.page.locator('.review-strip button').first().waitFor();
  return opened.page;
}

beforeAll(async () => {
  browser = await openBrowser();
  running = await startHub();
  rows = await hubRows(running);
  sessionId = await demoPractice(running, rows, 'jonas');
});
afterAll(async () => {
  for (const context of contexts) await context.close();
  await running.end();
  await browser.close();
});

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

const boxOf = (of: Page, selector: string): Promise<Box> =>
  of
    .locator(selector)
    .first()
    .evaluate((node) => {
      const { left, top, right, bottom } = node.getBoundingClientRect();
      return { left, top, right, bottom };
    });
const tooWide = (of: Page): Promise<number> =>
  of.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** All of these stand on the screen as it is, without scrolling, and none covers another. */
async function expectOnScreen(of: Page, selectors: readonly string[]): Promise<void> {
  expect(await of.evaluate(() => scrollY)).toBe(0);
  const boxes = await Promise.all(selectors.map((selector) => boxOf(of, selector)));
  for (const [i, box] of boxes.entries()) {
    expect(box.bottom, `${selectors[i]} ends on the screen`).toBeLessThanOrEqual(768);
    expect(box.right, `${selectors[i]} ends on the screen`).toBeLessThanOrEqual(1366);
    for (const [j, other] of boxes.entries()) {
      const apart =
        box.right <= other.left + 1 ||
        other.right <= box.left + 1 ||
        box.bottom <= other.top + 1 ||
        other.bottom <= box.top + 1;
      expect(i === j || apart, `${selectors[i]} does not cover ${selectors[j]}`).toBe(true);
    }
  }
}

describe('the page of a session', () => {
  it('begins with the sentence that the student got, then the strip; sensor figures are folded at its end', async () => {
    page = await visit('laptop');
    const text = await page.locator('.review-head .next-step').innerText();
    expect(text).toContain('What Jonas Quill (demo) was told at the end');
    expect(text).toContain('Pain comes first');
    const [step, strip, facts, sensors, exports] = await Promise.all(
      ['.next-step', '.review-strip', '.plan-kept', '.sensor-quality', '.exports'].map((s) =>
        page
          .locator(s)
          .first()
          .evaluate((node) => {
            const top = node.closest('details') ?? node;
            return top.getBoundingClientRect().top;
          }),
      ),
    );
    expect(step).toBeLessThan(strip!);
    expect(strip).toBeLessThan(facts!);
    expect(exports).toBeLessThan(sensors!);
    expect(await page.locator('.sensor-quality').isVisible()).toBe(false);
    await expectOnScreen(page, ['.next-step', '.review-strip', '.review-side .comment-box']);
  });

  it('speaks to the coach of the student, by name', async () => {
    const words = await page.locator('main').innerText();
    expect(words).toMatch(/Jonas Quill \(demo\) (rated pain|reported strong pain)/);
    expect(words).not.toMatch(/\byour pain\b|\bYou rated\b/i);
    await page.locator('.standing').getByRole('button', { name: 'Close with a reason' }).waitFor();
    expect(await seriousFindings(page)).toEqual([]);
  });

  it('has the film beside curves and body on one screen, and the comment box with them', async () => {
    await page.locator('.review-strip button').nth(1).click();
    await page.locator('.curves-plot').waitFor();
    const film = { name: 'top.mp4', mimeType: 'video/mp4', buffer: await filmed(page, 180, 320) };
    await page.locator('.attach input[type=file]').setInputFiles(film);
    await page.locator('.film video').waitFor();
    await page.evaluate(() => scrollTo(0, 0));
    const parts = [
      '.scrub input',
      '.curves-plot',
      '.film video',
      '.figures .body-views',
      '.moment-talk .comment-box',
    ];
    await expectOnScreen(page, parts);
    await wideLetters(page, true);
    await expectOnScreen(page, parts);
    expect(await tooWide(page)).toBeLessThanOrEqual(0);
    await wideLetters(page, false);
    await page.keyboard.press('c');
    expect(
      await page.evaluate(() => document.activeElement?.closest('.moment-talk') !== null),
    ).toBe(true);
    expect(await page.evaluate(() => scrollY)).toBe(0);
    expect(await seriousFindings(page)).toEqual([]);
  });

  it('has the film right under the slider on a phone', async () => {
    const phone = await visit('phone', '?repetition=2');
    await phone.locator('.curves-plot').waitFor();
    const [slider, film, curves] = await Promise.all(
      ['.moment-scrub', '.film video', '.curves-plot'].map((s) => boxOf(phone, s)),
    );
    expect(film!.top).toBeGreaterThanOrEqual(slider!.bottom);
    expect(film!.top - slider!.bottom).toBeLessThan(40);
    expect(curves!.top).toBeGreaterThanOrEqual(film!.bottom);
    expect(await tooWide(phone)).toBeLessThanOrEqual(0);
  });

  it('opens the answer box at a note that asks, and shows the answer with it', async () => {
    await running.context.db
      .updateTable('session')
      .set({ note: 'Sore at the end. Should I rest a week?' })
      .where('id', '=', sessionId)
      .execute();
    const asked = await visit('laptop', '?answer=note');
    const field = asked.getByLabel(/^Reply to Jonas/);
    await field.waitFor();
    await expect.poll(() => field.evaluate((node) => node === document.activeElement)).toBe(true);
    await field.fill('Yes. Rest, and see a physiotherapist.');
    await asked.keyboard.press('Control+Enter');
    await asked.locator('.thread').getByText('On the note').waitFor();
    const { students } = (await asked.evaluate(async () =>
      (await fetch('/api/students')).json(),
    )) as { students: { needs: { code: string }[] }[] };
    expect(students[0]?.needs.map(({ code }) => code)).not.toContain('unanswered');
  });
});
