import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import {
  type RunningService,
  SIZES,
  builtPage,
  openBrowser,
  openPage,
  seriousFindings,
  startService,
} from './pageHarness.ts';
import { simulated, withSilence } from './simulated.ts';
import { type Spoken, stubVoices } from './voices.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
  // Before any simulated student: the fast part of their clocks runs from when they are made.
  await builtPage();
});
afterAll(() => browser.close());

const LONG = { timeout: 240_000 };

/** Buttons and words that stand beyond the right edge. */
const sideways = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [
      ...document.querySelectorAll(
        '.top-actions button, .top-actions summary, main h2, main p, main strong',
      ),
    ]
      .filter((e) => e.closest('.menu-body') === null)
      .filter((e) => e.getBoundingClientRect().right > innerWidth + 1)
      .map((e) => e.textContent ?? ''),
  );

/** How much of the panels is out of sight until it is scrolled to, px. */
const hiddenBelow = (page: Page): Promise<number> =>
  page.evaluate(() => {
    const panels = document.querySelector('.panels');
    return panels === null ? 0 : panels.scrollHeight - panels.clientHeight;
  });

describe('the live page', () => {
  let service: RunningService;
  beforeAll(async () => {
    service = await startService(simulated('r r:short-hold b'));
  });
  afterAll(() => service.end());

  it('shows a passed and a failed rehearsal with their cues, and the ledger change', async () => {
    const { page, context, complaints } = await openPage(browser, service.url);
    const verdict = page.getByTestId('verdict');
    const ledger = page.getByTestId('ledger');
    await page.getByTestId('simulated').waitFor(LONG);
    await expectText(page.getByTestId('simulated'), 'Simulated student');
    await verdict.and(page.locator('[data-mark="passed"]')).waitFor(LONG);
    expect(await verdict.innerText()).toMatch(/^Passed/);
    expect(await ledger.innerText()).toMatch(/\d rehearsals?\b/);
    await verdict.and(page.locator('[data-mark="notPassed"]')).waitFor(LONG);
    expect(await verdict.innerText()).toMatch(/^Not passed\s+Hold longer at the top\./);
    expect(await page.locator('[data-measure="holdS"]').innerText()).toContain('off target');
    await expectText(page.getByTestId('due'), 'Hit a ball.');
    await verdict.and(page.locator('[data-mark="ball"]')).waitFor(LONG);
    expect(await ledger.innerText()).toContain('1 ball');
    expect(complaints).toEqual([]);
    await context.close();
  });

  it('reads from 4 m on a laptop: state word at least 96 px, verdict at least 160 px', async () => {
    const { page, context } = await openPage(browser, service.url);
    await page.getByTestId('state-word').waitFor(LONG);
    const size = await page
      .getByTestId('state-word')
      .evaluate((element) => parseFloat(getComputedStyle(element).fontSize));
    expect(size).toBeGreaterThanOrEqual(96);
    const shape = await page.locator('.verdict .shape').boundingBox();
    expect(Math.min(shape?.width ?? 0, shape?.height ?? 0)).toBeGreaterThanOrEqual(160);
    await page.keyboard.press('f');
    await page.locator('.practice.far').waitFor(LONG);
    const far = await page.locator('.verdict .shape').boundingBox();
    expect(far?.width ?? 0).toBeGreaterThanOrEqual(160);
    await context.close();
  });

  it.each([
    ['laptop', 'light'],
    ['laptop', 'dark'],
    ['phone', 'light'],
    ['phone', 'dark'],
  ] as const)('has no serious accessibility finding on a %s in the %s', async (size, scheme) => {
    const { page, context } = await openPage(browser, service.url, {
      viewport: SIZES[size],
      colorScheme: scheme,
    });
    await page.locator('[data-testid="verdict"]:not([data-mark="none"])').waitFor(LONG);
    expect(await seriousFindings(page)).toEqual([]);
    await page.locator('summary').click();
    expect(await seriousFindings(page)).toEqual([]);
    const overflow = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect(overflow).toBeLessThanOrEqual(0);
    const open = () => page.locator('details.menu').evaluate((e) => e.hasAttribute('open'));
    await page.mouse.click(4, 400);
    expect(await open()).toBe(false);
    await page.locator('summary').click();
    await page.goto(`${service.url}#/safety`);
    await page.getByRole('heading', { name: 'Safety', level: 1 }).waitFor(LONG);
    expect([await open(), await page.title()]).toEqual([false, 'Safety · Stillcatch']);
    expect(await seriousFindings(page)).toEqual([]);
    await context.close();
  });

  it('works by keyboard alone', async () => {
    const { page, context } = await openPage(browser, service.url);
    await page.locator('[data-testid="verdict"]:not([data-mark="none"])').waitFor(LONG);
    await page.keyboard.press('Tab');
    expect(await focused(page)).toBe('Skip to content');
    const reached: string[] = [];
    const tab = async (times: number): Promise<void> => {
      for (let i = 0; i < times; i++) {
        await page.keyboard.press('Tab');
        reached.push(await focused(page));
      }
    };
    await tab(6);
    expect(reached.at(-1)).toBe('More');
    await page.keyboard.press('Enter');
    await tab(9);
    for (const name of [
      'Today',
      'Practice',
      'Sensors',
      'Safety',
      'Pain',
      'Pause',
      'End',
      'Far view',
      'More',
    ]) {
      expect(
        reached.some((text) => text.startsWith(name)),
        name,
      ).toBe(true);
    }
    await page.keyboard.press('p');
    await expectText(page.getByTestId('state-word'), 'Paused');
    await page.keyboard.press('p');
    await page.waitForFunction(
      () => document.querySelector('.state-word')?.textContent !== 'Paused',
    );
    await page.keyboard.press('m');
    await page.getByRole('button', { name: 'Unmute' }).waitFor(LONG);
    await context.close();
  });

  it('speaks German where the browser does, in words, numbers and voice, and fits', async () => {
    const { page, context, complaints } = await openPage(browser, service.url, {
      locale: 'de-DE',
    });
    await page.addInitScript(stubVoices);
    await page.reload();
    const verdict = page.getByTestId('verdict');
    await verdict.and(page.locator('[data-mark="passed"]')).waitFor(LONG);
    expect(await page.evaluate(() => document.documentElement.lang)).toBe('de');
    expect(await verdict.innerText()).toMatch(/^Gelungen\s+(Gut|Das war richtig|Ja)/);
    expect(await page.locator('.measure-list').innerText()).toMatch(/\d,\d+ s ±0,04 s/);
    await page.waitForFunction(() => (globalThis as unknown as Spoken).spoken.length > 0);
    const spoken = await page.evaluate(() => (globalThis as unknown as Spoken).spoken);
    expect(new Set(spoken.map(({ lang }) => lang))).toEqual(new Set(['de-DE']));
    expect(spoken.map(({ text }) => text).join(' ')).not.toMatch(/\b(the|your|hold|ball early)\b/i);
    expect(await seriousFindings(page)).toEqual([]);
    for (const size of ['laptop', 'phone'] as const) {
      await page.setViewportSize(SIZES[size]);
      for (const key of ['f', 'f']) {
        await page.keyboard.press(key);
        expect(await sideways(page), `${size} goes out sideways`).toEqual([]);
        if (size === 'laptop') expect(await hiddenBelow(page), 'panels, px cut off').toBe(0);
      }
    }
    await page.setViewportSize(SIZES.laptop);
    await page.locator('summary').first().click();
    await page.getByRole('button', { name: 'English' }).press('Enter');
    await expectText(page.locator('#verdict-label'), 'Last repetition');
    expect(await page.evaluate(() => document.documentElement.lang)).toBe('en');
    await page.locator('[data-testid="verdict"]:not([data-mark="none"])').waitFor(LONG);
    await page.goto(`${service.url}?lang=de#/practice`);
    await expectText(page.locator('#verdict-label'), 'Letzte Wiederholung');
    // The settings ask where sessions are kept; this service keeps none.
    expect(complaints.filter((said) => !said.includes('404'))).toEqual([]);
    await context.close();
  });

  it('carries the standing caution on its first screen', async () => {
    const { page, context } = await openPage(browser, service.url);
    const caution = page.getByText('Training aid, not a medical device.');
    await caution.waitFor(LONG);
    const box = await caution.boundingBox();
    expect((box?.y ?? 9999) + (box?.height ?? 0)).toBeLessThanOrEqual(SIZES.laptop.height);
    await context.close();
  });
});

/** All but the words, from 4 m: what must be in sight, whole, at any moment of a practice. */
const IN_SIGHT = ['.state-word', '.hold', '.verdict .shape', '.cue', '.due', '.sensor-line'];

/** What is cut or out of sight, and whether the page scrolls. */
const unseen = (page: Page): Promise<string[]> =>
  page.evaluate((selectors) => {
    const root = document.scrollingElement as HTMLElement;
    const pain = [...document.querySelectorAll('.top-actions button')].slice(0, 1);
    const newest = [...document.querySelectorAll('.warning')].slice(0, 1);
    const seen = [...selectors.map((s) => document.querySelector(s)), ...pain, ...newest];
    const cut = seen.flatMap((element, i) => {
      const box = element?.getBoundingClientRect();
      const clip = element?.closest('.stage, .verdict, .alerts, body')?.getBoundingClientRect();
      if (!box || !clip || box.width === 0) return [`${selectors[i] ?? 'button'} is not there`];
      const whole = box.top >= clip.top - 1 && box.bottom <= Math.min(innerHeight, clip.bottom + 1);
      return whole && box.right <= innerWidth ? [] : [`${element?.className ?? ''} is cut`];
    });
    const scrolls = root.scrollHeight > innerHeight || root.scrollWidth > innerWidth;
    const sizes = ['.state-word', '.cue', '.verdict-word', '.due', '.warning'].map((s) =>
      parseFloat(getComputedStyle(document.querySelector(s) ?? document.body).fontSize),
    );
    const largest = sizes.every((size, i) => i === 0 || size < (sizes[0] ?? 0));
    return [...cut, ...(scrolls ? ['the page scrolls'] : []), ...(largest ? [] : ['small word'])];
  }, IN_SIGHT);

describe('a sensor that falls silent', () => {
  it('is named for as long as it is, and the page fits with it', async () => {
    const { source, silence } = withSilence(simulated('idle:600'));
    const service = await startService(source);
    const { page, context } = await openPage(browser, service.url);
    const banner = page.getByTestId('lost-sensor');
    await page.locator('.sensor-well').nth(1).waitFor(LONG);
    expect(await banner.count()).toBe(0);
    silence('chest', true);
    await banner.waitFor(LONG);
    expect(await banner.innerText()).toMatch(/^Chest: no data.*not scored until then\. \(\d+ s\)$/);
    for (const viewport of [SIZES.laptop, SIZES.phone]) {
      await page.setViewportSize(viewport);
      expect(await unseen(page), `at ${viewport.width}`).toEqual([]);
    }
    silence('chest', false);
    await banner.waitFor({ state: 'detached', ...LONG });
    await context.close();
    await service.end();
  });
});

describe('five warnings at once', () => {
  it('stay, leave all that is needed in sight on any screen, and go one by one', async () => {
    const ends = { externalRotationDeg: 20, flexionDeg: 5, lateralTrailDeg: 5, lateralLeadDeg: 5 };
    const plan = { ...DEFAULT_PLAN, ownRange: ends, volume: { perSession: 1, perWeek: 200 } };
    const service = await startService(
      simulated('r:missed-catch r:missed-catch idle:600', 'right', 3, 4),
      { plan },
    );
    const { page, context } = await openPage(browser, service.url);
    await page.locator('.strip li').nth(1).waitFor(LONG);
    service.practice.obey({ type: 'pain', rating: 4, signs: [] });
    await page.locator('.warning').nth(4).waitFor(LONG);
    for (const view of ['near', 'far']) {
      for (const viewport of [SIZES.laptop, { width: 1280, height: 720 }, SIZES.phone]) {
        await page.setViewportSize(viewport);
        expect(await unseen(page), `${view} at ${viewport.width}`).toEqual([]);
      }
      expect(await seriousFindings(page)).toEqual([]);
      await page.keyboard.press('f');
    }
    expect(await page.locator('.warning').first().innerText()).toContain('pain 4 of 10');
    for (let left = 4; left >= 0; left--) {
      await page.keyboard.press('Enter');
      await page.waitForFunction(
        (n) => document.querySelectorAll('.warning').length === n,
        left,
        LONG,
      );
    }
    expect(service.practice.view().warnings).toHaveLength(5);
    await context.close();
    await service.end();
  });
});

describe('a second screen', () => {
  it('is let in by its code and shows the practice; without the laptop nothing that looks live', async () => {
    const service = await startService(simulated('r', 'right', 3, 4), {
      secondScreenAt: '127.0.0.2',
    });
    const laptop = await openPage(browser, `${service.url}#/screen`);
    await laptop.page.getByText('Off: only this computer').waitFor(LONG);
    await laptop.page.getByRole('button', { name: 'Turn on' }).press('Enter');
    const code = (await laptop.page.getByTestId('code').innerText()).replaceAll(' ', '');
    const url = await laptop.page.locator('.way-in code').innerText();
    expect(await seriousFindings(laptop.page)).toEqual([]);
    const viewport = { width: 844, height: 390 };
    const { page, context, complaints } = await openPage(browser, url, { viewport });
    const input = page.getByLabel('Code');
    await input.waitFor(LONG);
    expect(await seriousFindings(page)).toEqual([]);
    await page.keyboard.type(code === '111111' ? '222222' : '111111');
    await page.keyboard.press('Enter');
    await page.getByText('Wrong code. Enter the code that the laptop shows.').waitFor(LONG);
    await page.keyboard.type(`${code.slice(0, 3)} ${code.slice(3)}`);
    await page.keyboard.press('Enter');
    const word = page.getByTestId('state-word');
    await word.filter({ hasText: /^Hold/ }).waitFor(LONG);
    await page.locator('[data-testid="verdict"][data-mark="passed"]').waitFor(LONG);
    expect(await seriousFindings(page)).toEqual([]);
    // Its own language and look are all that can be chosen on it.
    expect(await page.locator('main button:not(.menu *)').count()).toBe(0);
    await expectText(laptop.page.getByTestId('screens').locator('strong'), 'connected');
    // What the browser says of the wrong code and of asking before it was let in.
    expect(complaints.filter((text) => !/status of 40[13]/.test(text))).toEqual([]);
    await laptop.page.getByRole('button', { name: 'Turn off' }).press('Enter');
    await page.getByText('No connection').waitFor(LONG);
    expect(await page.getByTestId('verdict').count()).toBe(0);
    await context.close();
    await laptop.context.close();
    await service.end();
  });
});

async function expectText(
  locator: ReturnType<Awaited<ReturnType<typeof openPage>>['page']['locator']>,
  text: string,
): Promise<void> {
  await locator.filter({ hasText: text }).waitFor(LONG);
}

const focused = (page: Awaited<ReturnType<typeof openPage>>['page']): Promise<string> =>
  page.evaluate(() => document.activeElement?.textContent?.trim() ?? '');
