import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { builtPage, openBrowser, openPage, seriousFindings, startService } from './pageHarness.ts';
import { proxyTo } from './proxy.ts';
import { simulated } from './simulated.ts';
import { type Spoken, stubVoices } from './voices.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
  await builtPage();
});
afterAll(() => browser.close());

const LONG = { timeout: 240_000 };
const SLOW = { timeout: 400_000 };

const spoken = (page: Page): Promise<string[]> =>
  page.evaluate(() => (globalThis as unknown as Spoken).spoken.map(({ text }) => text));

const WORDS = {
  'en-GB': {
    lost: 'Connection lost.',
    back: 'Connected again.',
    old: /^\d+ s old$/,
    sensor: 'no connection',
    interrupted: 'Your practice was interrupted',
    open: 'Open the recorded practice',
    close: 'Close',
  },
  'de-DE': {
    lost: 'Verbindung verloren.',
    back: 'Wieder verbunden.',
    old: /^\d+ s alt$/,
    sensor: 'keine Verbindung',
    interrupted: 'Dein Training wurde unterbrochen',
    open: 'Das aufgenommene Training öffnen',
    close: 'Schließen',
  },
} as const;

describe.each(['en-GB', 'de-DE'] as const)('a page whose service is gone (%s)', SLOW, (locale) => {
  const words = WORDS[locale];

  it('says so, shows what it knew as old, and does not slide into another practice', async () => {
    const first = await startService(simulated('r r'));
    const way = await proxyTo(first.port);
    const { page, context } = await openPage(browser, 'about:blank', { locale });
    await page.addInitScript(stubVoices);
    await page.goto(way.url);
    await page.locator('.sensor-well').nth(1).waitFor(LONG);
    first.practice.tellKeeping({ sessionId: '2026-01-02-1', problem: null });
    await page.locator('[data-testid="verdict"][data-mark="passed"]').waitFor(LONG);

    way.freeze();
    await page.locator('.connection-lost').waitFor(LONG);
    expect(await page.locator('.sensor-well').count()).toBe(0);
    expect(await page.locator('.sensor-state').allInnerTexts()).toEqual([
      words.sensor,
      words.sensor,
    ]);
    expect(await page.locator('.stage.stale').isVisible()).toBe(true);
    await page.locator('.state-detail').filter({ hasText: words.old }).waitFor(LONG);
    await page.getByTestId('caption').filter({ hasText: words.lost }).waitFor(LONG);
    expect(await seriousFindings(page)).toEqual([]);
    way.thaw();
    await page.locator('.connection-lost').waitFor({ state: 'hidden', ...LONG });
    await page.locator('.sensor-well').nth(1).waitFor(LONG);
    await page.waitForFunction(
      (back) => (globalThis as unknown as Spoken).spoken.some(({ text }) => text === back),
      words.back,
    );
    expect(await page.getByTestId('interrupted').count()).toBe(0);

    await first.end();
    await page.locator('.connection-lost').waitFor(LONG);
    await page.waitForFunction(
      (lost) =>
        (globalThis as unknown as Spoken).spoken.filter(({ text }) => text === lost).length >= 2,
      words.lost,
    );
    const second = await startService(simulated('r r:short-hold'));
    way.aim(second.port);
    const notice = page.getByTestId('interrupted');
    await notice.waitFor(LONG);
    expect(await notice.innerText()).toContain(words.interrupted);
    expect(await page.evaluate(() => location.hash)).toBe('#/today');
    expect(await page.getByTestId('state-word').count()).toBe(0);
    expect(await seriousFindings(page)).toEqual([]);
    await page.waitForFunction(
      (said) => (globalThis as unknown as Spoken).spoken.some(({ text }) => text === `${said}.`),
      words.interrupted,
    );
    // The new one practises on; this page does not speak for it.
    const before = await spoken(page);
    while (second.practice.view().last === null) await page.waitForTimeout(100);
    await page.waitForTimeout(500);
    // On a busy machine the service may be silent for so long once more.
    const others = (all: readonly string[]): string[] =>
      all.filter((text) => text !== words.lost && text !== words.back);
    expect(others(await spoken(page))).toEqual(others(before));
    const open = notice.getByRole('link', { name: words.open });
    expect(await open.getAttribute('href')).toBe('#/sessions/2026-01-02-1');
    await notice.getByRole('button', { name: words.close }).press('Enter');
    await notice.waitFor({ state: 'detached', ...LONG });

    // Whoever goes there sees the practice that runs now, and each message is handled once.
    await page.goto(`${way.url}#/practice`);
    await page.getByTestId('state-word').waitFor(LONG);
    let marks = 0;
    second.practice.signals.subscribe(({ kind }) => (marks += kind === 'event' ? 1 : 0));
    await page.keyboard.press('p');
    while (marks === 0) await page.waitForTimeout(50);
    await page.waitForTimeout(200);
    expect(marks).toBe(1);
    await context.close();
    way.end();
    await second.end();
  });
});

it(
  'a page that stands still for seconds does not say that the connection was lost',
  SLOW,
  async () => {
    const service = await startService(simulated('idle:600'));
    const { page, context } = await openPage(browser, 'about:blank');
    await page.addInitScript(stubVoices);
    await page.goto(service.url);
    await page.locator('.sensor-well').nth(1).waitFor(LONG);
    await page.evaluate(() => {
      const untilMs = performance.now() + 4000;
      while (performance.now() < untilMs);
    });
    await page.waitForTimeout(1500);
    expect(await spoken(page)).not.toContain('Connection lost.');
    expect(await page.locator('.connection-lost').count()).toBe(0);
    await context.close();
    await service.end();
  },
);
