import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Command, PracticeView } from '../../src/streaming/contract.ts';
import { PRACTICES } from './layout/practices.ts';
import { practised, shownPractice } from './layout/shownPractice.ts';
import { type RunningHost, openBrowser, openPage, startHost } from './pageHarness.ts';

const LONG = { timeout: 120_000 };

let browser: Browser;
let running: RunningHost;
let shown: ReturnType<typeof shownPractice>;
let warned: PracticeView;
let calm: PracticeView;
const commands: Command[] = [];
beforeAll(async () => {
  browser = await openBrowser();
  const person = { firstUse: false, about: { name: 'Robin' }, painBefore: null, lastSession: null };
  const base = { ...practised('r b'), person };
  calm = { ...base, warnings: [] };
  warned = PRACTICES['two warnings']?.(base) ?? base;
  shown = shownPractice(warned);
  const obey = (command: Command): null => {
    commands.push(command);
    return null;
  };
  running = await startHost({ ...shown.host, obey });
});
beforeEach(() => {
  commands.length = 0;
});
afterAll(async () => {
  await running.end();
  await browser.close();
});

const NEWEST = { type: 'acknowledge', id: 'pain-next-day' };

/** Counts what is pressed, moved and sent on the page from now on. */
const watchPresses = (page: Page): Promise<void> =>
  page.evaluate(() => {
    Object.assign(globalThis, { presses: [] as string[] });
    for (const kind of ['click', 'submit', 'change', 'toggle', 'hashchange'])
      addEventListener(
        kind,
        () => (globalThis as unknown as { presses: string[] }).presses.push(kind),
        true,
      );
  });
const presses = (page: Page): Promise<string[]> =>
  page.evaluate(() => (globalThis as unknown as { presses: string[] }).presses);

/** What the service hears of a press. The press of another key behind it shows that there is no more to come. */
async function heardOf(page: Page, press: () => Promise<void>): Promise<readonly Command[]> {
  commands.length = 0;
  await press();
  // 'u' is not for us where somebody writes, so it is sent from the body.
  await page.evaluate(() =>
    document.body.dispatchEvent(new KeyboardEvent('keydown', { key: 'u', bubbles: true })),
  );
  await expect.poll(() => commands.at(-1)?.type, LONG).toBe('undo');
  return commands.slice(0, -1);
}

/** All that can have the focus on a page, each with its kind. */
async function controls(page: Page): Promise<readonly { control: Locator; kind: string }[]> {
  const all = page.locator(
    ':is(a[href], button, summary, input, select, [tabindex="0"]):visible:not(.warning *)',
  );
  return Promise.all(
    (await all.all()).map(async (control) => ({
      control,
      kind: await control.evaluate((e) =>
        e instanceof HTMLInputElement ? `input ${e.type}` : e.tagName.toLowerCase(),
      ),
    })),
  );
}

describe('Enter while two warnings are shown', () => {
  it('acknowledges the newest and presses nothing, whatever has the focus', async () => {
    shown.show(warned);
    const { page, context } = await openPage(browser, `${running.url}#/practice`);
    await page.locator('.warning').nth(1).waitFor(LONG);
    await page.locator('summary').first().click();
    await page.locator('.menu-body').waitFor(LONG);
    await watchPresses(page);
    const all = await controls(page);
    const kinds = new Set(all.map(({ kind }) => kind));
    const wanted = ['a', 'button', 'summary', 'div', 'input text', 'input range'];
    for (const kind of [...wanted, 'input checkbox', 'input radio']) expect(kinds).toContain(kind);
    for (const [i, { control, kind }] of all.entries()) {
      const heard = await heardOf(page, async () => {
        await control.focus();
        await page.keyboard.down('Enter');
        await page.keyboard.down('Enter'); // held down: the key repeats
        await page.keyboard.up('Enter');
      });
      expect(heard, `${kind}, ${i}`).toEqual([NEWEST]);
    }
    expect(await presses(page)).toEqual([]);
    await context.close();
  });

  it('leaves an older warning its own button', async () => {
    shown.show(warned);
    const { page, context } = await openPage(browser, `${running.url}#/practice`);
    const older = page.locator('.warning').nth(1).getByRole('button');
    const heard = await heardOf(page, () => older.press('Enter'));
    expect(heard).toEqual([{ type: 'acknowledge', id: 'pain-now' }]);
    await context.close();
  });

  it('keeps its meaning in an open question', async () => {
    shown.show(warned);
    const { page, context } = await openPage(browser, `${running.url}#/practice`);
    await page.locator('.warning').nth(1).waitFor(LONG);
    await page.keyboard.press('e');
    const dialog = page.locator('dialog[open]');
    await dialog.waitFor(LONG);
    await dialog.getByRole('button').last().press('Enter');
    await dialog.waitFor({ state: 'detached', ...LONG });
    expect(await heardOf(page, () => Promise.resolve())).toEqual([]);
    await context.close();
  });

  it('makes a new line in a note', async () => {
    shown.show({ ...warned, stage: 'after' });
    const { page, context } = await openPage(browser, `${running.url}#/after`);
    await page.locator('.warning').nth(1).waitFor(LONG);
    const note = page.locator('textarea');
    await note.fill('One');
    await note.press('Enter');
    await note.pressSequentially('two');
    expect(await note.inputValue()).toBe('One\ntwo');
    await page.getByRole('button', { name: 'Save' }).press('Enter');
    await expect.poll(() => commands, LONG).toEqual([NEWEST]);
    await context.close();
  });
});

describe('Enter while no warning is shown', () => {
  it('presses what has the focus', async () => {
    shown.show(calm);
    const { page, context } = await openPage(browser, `${running.url}#/practice`);
    await page.getByRole('button', { name: /^Pause/ }).press('Enter');
    await expect.poll(() => commands, LONG).toEqual([{ type: 'pause' }]);
    await context.close();
  });

  it('acknowledges nothing on a page that shows none', async () => {
    shown.show(warned);
    const { page, context } = await openPage(browser, `${running.url}#/safety`);
    await page.getByRole('heading', { level: 1 }).waitFor(LONG);
    await page.keyboard.press('Enter');
    await page.goto(`${running.url}#/practice`);
    await page.locator('.warning').nth(1).waitFor(LONG);
    expect(await heardOf(page, () => Promise.resolve())).toEqual([]);
    await context.close();
  });
});
