import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type SessionStore, openStore } from '../../src/sessions/store/store.ts';
import { addHistory } from './longHistory.ts';
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
const ids = new Map<string, string>();
const address = (name: string, query = ''): string =>
  `${service.url}#/sessions/${ids.get(name)}${query}`;

beforeAll(async () => {
  browser = await openBrowser();
  store = await openStore(mkdtempSync(join(tmpdir(), 'stillcatch-review-')));
  ids.set('right-mixed', await store.importSession(recording('right-mixed')));
  await addHistory(store, 12, Date.now() - 86_400_000);
  for (const name of ['left-mixed', 'loss-skew-gap', 'distractors'])
    ids.set(name, await store.importSession(recording(name)));
  const sessions = { store, problem: null, folder: store.places.root };
  service = await startService(simulated('r'), { sessions });
});
afterAll(async () => {
  await service.end();
  await store.close();
  await browser.close();
});

/** Presses Tab until `selector` has the focus. */
async function tabTo(page: Page, selector: string): Promise<void> {
  for (let presses = 0; presses < 60; presses++) {
    const there = await page.evaluate(
      `document.activeElement?.matches(${JSON.stringify(selector)})`,
    );
    if (there === true) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab never came to ${selector}`);
}

const focused = (page: Page): Promise<string> =>
  page.evaluate(
    `document.activeElement.getAttribute('aria-label') ?? document.activeElement.textContent`,
  );

const width = (page: Page): Promise<number> =>
  page.evaluate('document.documentElement.scrollWidth');

const repetitionIn = (page: Page): string | null =>
  new URLSearchParams(page.url().split('?')[1]).get('repetition');

describe('a session under review', () => {
  it('is walked with the keyboard: strip, one repetition, its moments, another beside it, and back', async () => {
    const { page, context, complaints } = await openPage(browser, address('right-mixed'));
    await page.locator('.multiples li').nth(14).waitFor();
    expect(await seriousFindings(page)).toEqual([]);
    expect(await page.locator('.plan-kept').innerText()).toMatch(/Mix: OK.*Volume: OK/s);
    await page
      .locator('details:has(.sensor-quality)')
      .evaluate((fold) => ((fold as HTMLDetailsElement).open = true));
    expect(await page.locator('.sensor-quality').innerText()).toMatch(
      /^Chest: \d+\.\d readings a second, \d+\.\d % lost, (no gap|\d+ gaps?).*\nTrail arm: /,
    );
    const flexion = page.locator('.measure-table tr[data-measure=addedFlexionDeg]');
    expect(await flexion.innerText()).toMatch(/±4°, 11 repetitions.*±4°, 4 repetitions/s);

    await tabTo(page, '.review-strip button');
    for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowRight');
    expect(await focused(page)).toMatch(/^4: rehearsal not passed, at 1:0\d/);
    await page.keyboard.press('Enter');
    await page.locator('.curves-plot').waitFor();
    expect(await focused(page)).toContain('Repetition 4');
    await page.keyboard.press('ArrowRight');
    await page.getByRole('heading', { name: 'Repetition 5' }).waitFor();
    await page.keyboard.press('ArrowLeft');
    await page.getByRole('heading', { name: 'Repetition 4' }).waitFor();
    await page.locator('.curves-plot').waitFor();

    await tabTo(page, '.scrub input');
    await page.keyboard.press('ArrowRight');
    expect(await page.locator('.scrubber output').innerText()).toBe('+0.01 s from the release');
    expect(repetitionIn(page)).toBe('4');
    await page.getByRole('button', { name: /^Catch/ }).focus();
    await page.keyboard.press('Enter');
    const caught = await page.locator('.scrubber output').innerText();
    expect(Number(caught.slice(1, 5))).toBeGreaterThan(0.2);
    expect(await page.locator('.review-words').innerText()).toContain('Hold longer at the top.');
    const plot = (await page.locator('.over-strips').boundingBox())!;
    await page.mouse.move(plot.x + plot.width * 0.9, plot.y + 20);
    await page.mouse.down();
    await page.mouse.move(plot.x + 2, plot.y + 60);
    await page.mouse.up();
    expect(await page.locator('.scrubber output').innerText()).toMatch(/^−\d\.\d\d s/);
    expect(await seriousFindings(page)).toEqual([]);

    await page.locator('.compare-choice select').selectOption('2');
    await page.getByRole('heading', { name: '4 and 2 compared' }).waitFor();
    const hold = page.locator('.compare-table tbody tr').first();
    expect(await hold.innerText()).toMatch(/hold at the top.*−0\.\d s ±0\.06 s.*larger/s);
    await page.locator('.curve-strip .beside').nth(4).waitFor();
    expect(await seriousFindings(page)).toEqual([]);

    await page.keyboard.press('Escape');
    await page.locator('.multiples').waitFor();
    expect(await focused(page)).toMatch(/^4:/);
    await expect.poll(() => repetitionIn(page)).toBeNull();
    expect(complaints).toEqual([]);
    await context.close();
  });

  it('keeps its filter in the address, and goes back with the browser', async () => {
    const { page, context } = await openPage(browser, address('right-mixed'));
    await page.getByRole('button', { name: 'Balls (4)' }).click();
    await page.getByText('4 of 15 repetitions').waitFor();
    expect(page.url()).toContain('show=ball');
    await page.reload();
    await page.locator('.multiples li').nth(3).waitFor();
    expect(await page.locator('.multiples li').count()).toBe(4);
    expect(await page.locator('.repetition-table tbody tr').count()).toBe(4);
    await page.locator('.multiples button').first().click();
    await page.getByRole('heading', { name: 'Repetition 3' }).waitFor();
    await page.keyboard.press('ArrowRight');
    await page.getByRole('heading', { name: 'Repetition 6' }).waitFor();
    await page.goBack();
    await page.locator('.multiples').waitFor();
    expect(page.url()).toContain('show=ball');
    await page.goto(`${service.url}#/sessions`);
    await page.locator('.session-row a').first().click();
    await page.locator('.multiples button').first().click();
    await page.locator('.curves-plot').waitFor();
    await page.keyboard.press('Escape');
    await page.locator('.multiples').waitFor();
    await page.goBack();
    await page.getByRole('heading', { name: 'Sessions' }).waitFor();
    await context.close();
  });

  it('plays through the moments, and from one to the next where less motion is asked for', async () => {
    const query = '?repetition=2';
    const whole = await openPage(browser, address('right-mixed', query));
    const output = whole.page.locator('.scrubber output');
    await output.waitFor();
    await whole.page.getByRole('button', { name: 'Play' }).click();
    await expect.poll(() => output.innerText()).not.toContain('0.00 s');
    await whole.context.close();
    const less = await openPage(browser, address('right-mixed', query), {
      reducedMotion: 'reduce',
    });
    await less.page.getByText('playback jumps from moment to moment').waitFor();
    await less.page.getByRole('button', { name: 'Play' }).click();
    const start = await less.page.getByRole('button', { name: /^Arm start/ }).innerText();
    await expect
      .poll(() => less.page.locator('.scrubber output').innerText())
      .toContain(start.replace('Arm start ', ''));
    await less.context.close();
  });

  it('draws the left-handed golfer as the mirror image', async () => {
    const elbows: number[] = [];
    for (const name of ['right-mixed', 'left-mixed']) {
      const { page, context } = await openPage(browser, address(name, '?repetition=1'));
      await page.getByRole('button', { name: /^Start/ }).click();
      const arm = page.locator('.figures .now .trail-upperarm').first();
      const middle = await arm.evaluate((path) => {
        const { x, width } = (path as SVGGraphicsElement).getBBox();
        return x + width / 2;
      });
      elbows.push(middle);
      await context.close();
    }
    expect(elbows[0]! * elbows[1]!).toBeLessThan(0);
  });

  it('says what was lost, what is not there, and what has no repetition', async () => {
    const { page, context } = await openPage(browser, address('loss-skew-gap', '?repetition=4'));
    await page.getByText('Data was lost during').waitFor();
    await page.goto(address('right-mixed', '?repetition=99'));
    await page.getByText('This session has no repetition 99.').waitFor();
    await page.goto(`${service.url}#/sessions/nosuch`);
    await page.getByText('Session not found.').waitFor();
    await page.goto(address('distractors'));
    await page.getByText('No rehearsals or balls could be measured.').waitFor();
    await page.getByText('Only 2 repetitions').waitFor();
    expect(await seriousFindings(page)).toEqual([]);
    await context.close();
  });

  it('is walked up and down where its repetitions stand in rows', async () => {
    const { page, context } = await openPage(browser, address('right-mixed'), {
      viewport: SIZES.phone,
    });
    await page.locator('.multiples li').nth(14).waitFor();
    await page.locator('.review-strip button').first().focus();
    await page.keyboard.press('ArrowDown');
    const below = await focused(page);
    expect(Number.parseInt(below, 10)).toBeGreaterThan(8);
    await page.keyboard.press('ArrowUp');
    expect(await focused(page)).toMatch(/^1:/);
    await context.close();
  });

  it('fits a phone in the dark', async () => {
    const phone = { viewport: SIZES.phone, colorScheme: 'dark' } as const;
    const { page, context } = await openPage(browser, address('left-mixed'), phone);
    await page.locator('.multiples li').nth(12).waitFor();
    expect(await width(page)).toBeLessThanOrEqual(SIZES.phone.width);
    expect(await seriousFindings(page)).toEqual([]);
    await page.locator('.review-strip button').first().click();
    await page.locator('.curves-plot').waitFor();
    expect(await width(page)).toBeLessThanOrEqual(SIZES.phone.width);
    expect(await seriousFindings(page)).toEqual([]);
    await context.close();
  });
});

describe('progress', () => {
  it('is read with the keyboard: range, a session, its plan change, the table', async () => {
    const { page, context, complaints } = await openPage(browser, `${service.url}#/progress`);
    await page.locator('.progress-chart').nth(9).waitFor();
    expect(await page.locator('.practice-days').innerText()).toMatch(
      /Practised on 1\d of \d+ days/,
    );
    expect(await seriousFindings(page)).toEqual([]);
    await tabTo(page, 'input[name=progress-range]');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    expect(await page.locator('.range-choice .chosen').innerText()).toBe('1 month');
    await tabTo(page, '.chosen-session input');
    await page.keyboard.press('Home');
    for (let i = 0; i < 6; i++) await page.keyboard.press('ArrowRight');
    await page
      .getByText(/Plan changed:.*bend added beyond the turn: at least 2°, now at least 4°/)
      .waitFor();
    await tabTo(page, '.progress-table summary');
    await page.keyboard.press('Enter');
    await page.locator('.progress-table tbody tr').nth(11).waitFor();
    expect(await seriousFindings(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it('fits a phone', async () => {
    const { page, context } = await openPage(browser, `${service.url}#/progress`, {
      viewport: SIZES.phone,
    });
    await page.locator('.progress-chart').nth(9).waitFor();
    expect(await width(page)).toBeLessThanOrEqual(SIZES.phone.width);
    await context.close();
  });
});

describe('the list of sessions', () => {
  const drop = (page: Page, name: string, bytes: Buffer): Promise<unknown> =>
    page.evaluate(
      `(() => {
        const raw = Uint8Array.from(atob(${JSON.stringify(bytes.toString('base64'))}), (c) => c.charCodeAt(0));
        const dataTransfer = new DataTransfer();
        dataTransfer.items.add(new File([raw], ${JSON.stringify(name)}));
        for (const type of ['dragover', 'drop'])
          document.querySelector('main').dispatchEvent(new DragEvent(type, { dataTransfer, bubbles: true, cancelable: true }));
      })()`,
    );

  it('takes what is dropped on the page, and says why it does not', async () => {
    const { page, context } = await openPage(browser, `${service.url}#/sessions`);
    await page.locator('.session-row').first().waitFor();
    await drop(page, 'holiday.mp4', Buffer.from('film'));
    await page.getByText('holiday.mp4 was not imported: it is not a .zip file.').waitFor();
    await drop(page, 'right.zip', readFileSync(recording('right-mixed')));
    await page.getByText(/right\.zip was not imported: .*already here/).waitFor();
    expect(await seriousFindings(page)).toEqual([]);
    await context.close();
  });
});
