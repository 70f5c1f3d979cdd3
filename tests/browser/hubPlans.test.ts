import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type RunningHub, startHub } from './hubHarness.ts';
import { SIZES, openBrowser, openPage, seriousFindings } from './pageHarness.ts';
import { fillPractised, signIn } from './practisedHub.ts';

let browser: Browser;
let running: RunningHub;
let coach: Page;
let end: () => Promise<void>;
const complaints: string[][] = [];

async function expectSound(page: Page): Promise<void> {
  expect(await seriousFindings(page)).toEqual([]);
  const over = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(over).toBeLessThanOrEqual(0);
}

beforeAll(async () => {
  browser = await openBrowser();
  running = await startHub();
  await fillPractised(running);
  const opened = await openPage(browser, `${running.url}/#/students/sam/plan`, {
    viewport: SIZES.laptop,
  });
  coach = opened.page;
  complaints.push(opened.complaints);
  end = () => opened.context.close();
  await signIn(coach);
  await coach.getByLabel('hold at the top: at least').waitFor();
});
afterAll(async () => {
  await end();
  await running.end();
  await browser.close();
});

describe('a plan', () => {
  it('is not saved over one that was saved in another tab meanwhile: both are shown, field by field', async () => {
    const other = await coach.context().newPage();
    await other.goto(coach.url());
    await other.getByLabel('hold at the top: at least').fill('1.4');
    await other.getByLabel('Note to the student').fill('Theirs');
    await other.getByRole('button', { name: 'Save as new version' }).click();
    await other.getByText(/not yet received by the student's computer/).waitFor();
    await other.close();
    await coach.getByLabel('Note to the student').fill('Mine');
    await coach.getByLabel('Maximum repetitions per week').fill('150');
    await coach.getByRole('button', { name: 'Save as new version' }).click();
    await coach.getByRole('heading', { name: 'This plan was changed meanwhile' }).waitFor();
    await coach.getByText(/Carla saved version 3 on .*, after you began/).waitFor();
    await expectSound(coach);
    const row = (name: RegExp) => coach.locator('.clash-table tr', { hasText: name });
    expect(
      await row(/hold at the top/)
        .getByRole('radio')
        .nth(0)
        .isChecked(),
    ).toBe(true);
    expect(
      await row(/per week/)
        .getByRole('radio')
        .nth(1)
        .isChecked(),
    ).toBe(true);
    const save = coach.getByRole('button', { name: 'Save as version 4' });
    expect(await save.isDisabled()).toBe(true);
    await coach.setViewportSize(SIZES.phone);
    await expectSound(coach);
    await coach.setViewportSize(SIZES.laptop);
    await row(/^note/).getByLabel('Mine').check();
    await save.click();
    await coach.getByText('Version 4:').first().waitFor();
    await coach.locator('blockquote', { hasText: 'Mine' }).waitFor();
    await coach.getByText('Versions', { exact: true }).click();
    const made = coach.locator('.versions li').first();
    await expect.poll(() => made.innerText()).toContain('Repetitions per week: at most 150');
    expect(await made.innerText()).not.toContain('Hold at the top');
  });
});

describe('what is being written', () => {
  it('survives Back, a reload and a lost sign-in, and is gone once it was sent', async () => {
    const about = coach.getByLabel('Topic');
    await about.fill('Half a sentence');
    await coach.getByRole('link', { name: 'Change plan' }).click();
    await coach.getByLabel('Note to the student').fill('Half a note');
    await coach.goBack();
    await coach.getByText(/^Draft from \d/).waitFor();
    expect(await about.inputValue()).toBe('Half a sentence');
    await coach.goto(`${running.url}/#/students/sam/plan`);
    await coach.reload();
    await coach.getByText(/^Draft from \d/).waitFor();
    expect(await coach.getByLabel('Note to the student').inputValue()).toBe('Half a note');
    await coach.getByRole('button', { name: 'Discard draft' }).click();
    expect(await coach.getByLabel('Note to the student').inputValue()).toBe('Mine');

    await coach.goto(`${running.url}/#/students/sam`);
    await coach.getByText(/^Draft from \d/).waitFor();
    await coach.context().clearCookies();
    await coach.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
    await coach.getByRole('heading', { name: 'Sign in' }).waitFor();
    await signIn(coach);
    await coach.getByText(/^Draft from \d/).waitFor();
    expect(await about.inputValue()).toBe('Half a sentence');
    await coach.getByRole('button', { name: 'Add lesson' }).click();
    await coach.locator('.lines').getByText('Half a sentence').waitFor();
    expect(await about.inputValue()).toBe('');
    await coach.reload();
    await coach.locator('.lines').getByText('Half a sentence').waitFor();
    expect(await coach.getByText(/^Draft from/).count()).toBe(0);
  });

  it('as a comment on a session too', async () => {
    await coach.goto(`${running.url}/#/sessions/s1`);
    const field = coach.getByLabel('Comment', { exact: true });
    await field.fill('Half a comment');
    await coach.reload();
    await coach.getByText(/^Draft from \d/).waitFor();
    expect(await field.inputValue()).toBe('Half a comment');
    await coach.getByRole('button', { name: 'Discard draft' }).click();
    expect(await field.inputValue()).toBe('');
  });
});

describe('two periods', () => {
  it('are the last weeks and the same weeks a year ago, with what can be said of all differences at once', async () => {
    await coach.goto(`${running.url}/#/students/sam/compare`);
    await coach.getByLabel('Compare').selectOption('year');
    await coach.getByText(/\d+ differences are looked at together/).waitFor();
    await coach.getByRole('heading', { name: 'Passed', exact: true }).waitFor();
    await coach.getByRole('heading', { name: 'Carry-over', exact: true }).waitFor();
    await coach.getByText(/The plan changed \(version 1 earlier, 2 later\)/).waitFor();
    expect(await coach.getByText('clear difference').count()).toBeGreaterThan(3);
    await expectSound(coach);
    await coach.setViewportSize(SIZES.phone);
    await expectSound(coach);
    const first = coach.locator('.difference-table tbody tr').first();
    const tops = await first
      .locator('td')
      .evaluateAll((cells) => cells.map((cell) => cell.getBoundingClientRect().top));
    expect(tops[0]).toBeLessThan(tops[2]!);
    expect(tops[1]).toBeLessThan(tops[2]!);
    await coach.setViewportSize(SIZES.laptop);
  });

  it('say so where one is far shorter than the other', async () => {
    await coach.getByLabel('Compare').selectOption('own');
    await coach.getByLabel('Both equally long').uncheck();
    const from = await coach.getByLabel('from').first().inputValue();
    await coach.getByLabel('up to and including').first().fill(from);
    await coach
      .getByText('The periods are not equally long: 1 day earlier, 28 days later.')
      .waitFor();
    await coach.getByLabel('Both equally long').check();
    await coach.getByText('The periods are not equally long').waitFor({ state: 'detached' });
    expect(complaints.flat().filter((text) => !/status of (401|409)/.test(text))).toEqual([]);
  });
});
