import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { studentHost } from '../../src/main/studentHost.ts';
import { NOBODY, type Person } from '../../src/practice/person.ts';
import { SyntheticSource } from '../../src/sensors/sources/synthetic/index.ts';
import { SIZES, openBrowser, openPage, seriousFindings, startHost } from './pageHarness.ts';
import { simulated } from './simulated.ts';

const LONG = { timeout: 90_000 };
/** The simulated student lives this much faster than the test's clock. */
const SPEED = 4;

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

/** A whole service with a student's memory that lasts as long as the test. */
async function studentService(person: Person = NOBODY) {
  const kept = { person };
  const host = studentHost({
    first: { source: simulated(''), hand: 'right', kind: 'demo', close: async () => undefined },
    sourceFor: ({ hand }) => new SyntheticSource({ seed: 4, hand, prompted: true, speed: SPEED }),
    store: { read: () => kept.person, write: (next) => void (kept.person = next) },
    now: () => performance.now(),
    date: () => Date.UTC(2026, 4, 3, 9),
  });
  return { ...(await startHost(host)), kept };
}

const isFocused = (page: Page, name: string | RegExp): Promise<boolean> =>
  page.evaluate(
    (pattern) => {
      const element = document.activeElement;
      const label = element?.closest('label')?.textContent ?? element?.textContent ?? '';
      return new RegExp(pattern).test(label.trim());
    },
    typeof name === 'string' ? `^${name}` : name.source,
  );

/** Moves the focus by Tab alone to what has that name. */
async function tabTo(page: Page, name: string | RegExp): Promise<void> {
  for (let i = 0; i < 60; i++) {
    if (await isFocused(page, name)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab never came to ${String(name)}`);
}

async function pressOn(page: Page, name: string | RegExp, key = 'Enter'): Promise<void> {
  await tabTo(page, name);
  await page.keyboard.press(key);
}

const heading = (page: Page, name: string) => page.getByRole('heading', { name }).waitFor(LONG);

describe('a whole practice at home', () => {
  it('goes by keyboard alone from today to the summary, with nothing serious found on the way', async () => {
    const service = await studentService();
    const { page, context, complaints } = await openPage(browser, `${service.url}#/today`);
    await heading(page, 'Today');
    expect(await seriousFindings(page)).toEqual([]);
    await pressOn(page, 'Start a practice');

    await heading(page, 'Before you start');
    expect(await seriousFindings(page)).toEqual([]);
    await pressOn(page, 'Confirm');
    await page.getByText('Choose a number first.').waitFor(LONG);
    await page.locator('body').evaluate(() => document.querySelector<HTMLElement>('h2')?.focus());
    await pressOn(page, 'None of these', 'Space');
    await pressOn(page, 'I am warm', 'Space');
    await tabTo(page, '0$');
    await page.keyboard.press('ArrowRight');
    await pressOn(page, 'Confirm');
    await page.getByText('Clear 3 m around you').and(page.getByRole('alert')).waitFor(LONG);
    // what was filled in is still there
    expect(await page.getByLabel('I am warm').isChecked()).toBe(true);
    await page.locator('body').evaluate(() => document.querySelector<HTMLElement>('h2')?.focus());
    await pressOn(page, 'It is so', 'Space');
    await pressOn(page, 'Confirm');

    await heading(page, 'Strap on two sensors');
    expect(await seriousFindings(page)).toEqual([]);
    await pressOn(page, 'Both are on');
    await heading(page, 'Are both sensors well');
    await page
      .getByRole('button', { name: 'Calibrate' })
      .and(page.locator(':enabled'))
      .waitFor(LONG);
    expect(await seriousFindings(page)).toEqual([]);
    await pressOn(page, 'Calibrate');

    await page.locator('[data-step="bow"]').waitFor(LONG);
    expect(await seriousFindings(page)).toEqual([]);
    await heading(page, 'Your own comfortable range');
    expect(await page.getByTestId('caption').innerText()).toContain('Calibrated');
    await pressOn(page, 'Measure my range');
    await page.locator('[data-step="rangeTrailSide"]').waitFor(LONG);
    await page.locator('main.practice.far').waitFor(LONG);

    await page.locator('.strip li').nth(1).waitFor(LONG);
    await page.keyboard.press('b');
    await page.locator('.strip li.corrected').waitFor(LONG);
    await page.keyboard.press('u');
    await page.locator('.strip li.corrected').waitFor({ state: 'detached', ...LONG });
    await page.keyboard.press('h');
    await heading(page, 'Pain now?');
    expect(await seriousFindings(page)).toEqual([]);
    await pressOn(page, 'No pain, go on');
    await page.locator('dialog').waitFor({ state: 'detached', ...LONG });
    await page.keyboard.press('e');
    await pressOn(page, 'End it');

    await heading(page, 'After the practice');
    expect(await page.getByTestId('summary').innerText()).toMatch(/\d of \d passed|No rehearsal/);
    expect(await seriousFindings(page)).toEqual([]);
    await tabTo(page, '0$');
    await page.keyboard.press('Space');
    await tabTo(page, 'A note');
    await page.keyboard.type('Chest first felt right.');
    await pressOn(page, 'Keep and close');
    await page.getByText('Kept.').waitFor(LONG);

    const [session] = service.kept.person.sessions;
    expect(session).toMatchObject({ painBefore: 1, painAfter: 0, note: 'Chest first felt right.' });
    expect(service.kept.person.historyConfirmed).toBe(true);
    expect(service.kept.person.ownRange.flexionDeg).toBeGreaterThan(50);
    expect(complaints).toEqual([]);
    await context.close();
    await service.end();
  });

  it('stops on a phone where a red flag was named', async () => {
    const service = await studentService();
    const { page, context } = await openPage(browser, `${service.url}#/today`, {
      viewport: SIZES.phone,
      hasTouch: true,
    });
    await page.getByRole('button', { name: 'Start a practice' }).tap();
    await page.getByLabel('It is so').check();
    await page.getByLabel('None of these').check();
    await page.getByLabel('Yes, one of these').check();
    await page.locator('.rating').first().tap();
    await page.getByRole('button', { name: 'Confirm' }).tap();
    await heading(page, 'No practice today');
    await page
      .getByText('This can need urgent care. Stop and seek medical help now.')
      .first()
      .waitFor(LONG);
    expect(await seriousFindings(page)).toEqual([]);
    const overflow = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect(overflow).toBeLessThanOrEqual(0);
    await context.close();
    await service.end();
  });

  it('ends the session at a pain over 5 and says what to do', async () => {
    const service = await studentService({ ...NOBODY, historyConfirmed: true });
    const { page, context } = await openPage(browser, service.url);
    await page.locator('[data-testid="verdict"]:not([data-mark="none"])').waitFor(LONG);
    await page.keyboard.press('h');
    await page.locator('dialog .rating').nth(7).click();
    await page.getByRole('button', { name: 'Tell it' }).click();
    await heading(page, 'After the practice');
    await page
      .getByText('Stop now and get advice from a licensed health professional')
      .first()
      .waitFor(LONG);
    await context.close();
    await service.end();
  });
});
