import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PracticeView } from '../../../src/streaming/contract.ts';
import { type RunningHost, openBrowser, openPage, startHost } from '../pageHarness.ts';
import { type LookRules, findings } from './findings.ts';
import { PLACES } from './places.ts';
import { PRACTICES } from './practices.ts';
import { practised, shownPractice } from './shownPractice.ts';
import { installTypefaces } from './typefaces.ts';

const LONG = { timeout: 120_000 };

const RULES: Readonly<Record<(typeof PLACES)[number]['name'], LookRules>> = {
  laptop: { whole: true },
  phone: { whole: true, mayScroll: '.panels, .alerts' },
  '200 %': {},
};

let browser: Browser;
let running: RunningHost;
let shown: ReturnType<typeof shownPractice>;
let base: PracticeView;
beforeAll(async () => {
  browser = await openBrowser();
  base = practised('b r r:short-hold');
  shown = shownPractice(base);
  running = await startHost(shown.host);
});
afterAll(async () => {
  await running.end();
  await browser.close();
});

/** The page has drawn a view once its number of the last repetition stands there. */
async function showing(page: Page, view: PracticeView, turn: number): Promise<void> {
  const last = view.last === null ? null : { ...view.last, index: turn };
  shown.show({ ...view, last });
  await page.locator('#verdict-label', { hasText: String(turn) }).waitFor(LONG);
}

describe.each(['en', 'de'] as const)('the practice in %s', (lang) => {
  it.each(PLACES)('is whole on $name, whatever stands on it and in any typeface', async (place) => {
    const { width, height, scale } = place;
    const { page, context } = await openPage(browser, `${running.url}?lang=${lang}#/practice`, {
      viewport: { width, height },
      deviceScaleFactor: scale,
    });
    await page.getByTestId('state-word').waitFor(LONG);
    await installTypefaces(page);
    const found: string[] = [];
    let turn = 100;
    for (const view of ['near', 'far'] as const) {
      for (const [name, change] of Object.entries(PRACTICES)) {
        await showing(page, change(base), ++turn);
        const some = await findings(page, RULES[place.name]);
        found.push(...some.map((one) => `${view}, ${name}, ${one}`));
        if (!/(two|three|five) warnings|lost|kept/.test(name)) {
          const due = await page.getByTestId('due').boundingBox();
          if (due === null || due.y + due.height > height)
            found.push(`${view}, ${name}: due is low`);
        }
        await picture(page, `practice-${lang}-${place.name}-${view}-${name}`);
      }
      await page.keyboard.press('f');
    }
    expect(found).toEqual([]);
    await context.close();
  });
});

/** Kept where somebody asked to look at the pages. */
async function picture(page: Page, name: string): Promise<void> {
  const folder = process.env['SHOTS'];
  if (folder) await page.screenshot({ path: `${folder}/${name.replaceAll(' ', '')}.png` });
}
