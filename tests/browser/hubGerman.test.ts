import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { de } from '../../src/dashboard/strings/de.ts';
import { en } from '../../src/dashboard/strings/en.ts';
import { escaped } from '../../src/sensors/sentence.ts';
import { hubDe } from '../../src/dashboard/strings/hubDe.ts';
import { hubEn } from '../../src/dashboard/strings/hubEn.ts';
import { type RunningHub, startHub } from './hubHarness.ts';
import { type HubRows, hubRows } from './hubRows.ts';
import { SIZES, openBrowser, openPage, seriousFindings } from './pageHarness.ts';

let browser: Browser;
let running: RunningHub;
let rows: HubRows;
const contexts: BrowserContext[] = [];
const LONG = { timeout: 240_000 };

const textsOf = (tree: unknown): readonly string[] =>
  typeof tree === 'string'
    ? [tree]
    : typeof tree === 'object' && tree !== null
      ? Object.values(tree).flatMap(textsOf)
      : [];

const german = new Set([de, hubDe].flatMap(textsOf));
/** Fixed texts that only the English pages have, long enough not to be part of another word. */
const english = [...new Set([en, hubEn].flatMap(textsOf))].filter(
  (text) => !german.has(text) && /[a-z]{3,}/.test(text) && text.length > 6,
);
/** Not as a part of a longer word. */
const standsIn = (text: string, one: string): boolean =>
  new RegExp(`(?<!\\p{L})${escaped(one)}(?!\\p{L})`, 'u').test(text);
/** Words of sentences that are put together. */
const WORDS =
  /\b(the|sessions?|rehearsals?|repetitions?|reviewed|yesterday|today|ago|practice|practised|warnings?|students?|version \d+, from|valid|not|yet|with|of)\b/i;

/** What stands on the page without what people wrote and what the pages call themselves. */
const shown = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const body = document.body.cloneNode(true) as HTMLElement;
    for (const own of body.querySelectorAll('noscript, script, [lang="en"], blockquote'))
      own.remove();
    return body.innerText.replaceAll('Fernhill Practice Club', '');
  });

async function visit(size: keyof typeof SIZES): Promise<Page> {
  const opened = await openPage(browser, 'about:blank', { viewport: SIZES[size] });
  contexts.push(opened.context);
  await opened.context.addCookies([await rows.cookieOf('carla')]);
  await opened.page.goto(`${running.url}/?lang=de#/`);
  await opened.page.getByRole('heading', { name: 'Wer braucht mich' }).waitFor();
  return opened.page;
}

beforeAll(async () => {
  browser = await openBrowser();
  running = await startHub();
  rows = await hubRows(running);
  await rows.addStudent('ines', 'Ines Abend');
  await rows.addStudent('otto', 'Otto Brand');
  const session = { studentId: 'ines', rehearsals: 40, balls: 10, scored: 38, passed: 30 };
  for (let k = 0; k < 3; k++)
    await rows.addSession({
      ...session,
      id: `x${k}`,
      startedMs: rows.daysAgo(k + 0.3),
      painAfter: 6,
    });
  await rows.addWarning('x0', 'own-range');
});
afterAll(async () => {
  for (const context of contexts) await context.close();
  await running.end();
  await browser.close();
});

const PLACES = [
  '',
  'students/ines',
  'students/ines/plan',
  'students/ines/compare',
  'students/ines/report',
  'texts',
  'club',
  'account',
  'safety',
  'help',
  'nowhere',
];

describe('the hub in German', () => {
  it.each(['laptop', 'phone'] as const)(
    'has no English left in any place on a %s',
    async (size) => {
      const page = await visit(size);
      expect(await page.evaluate(() => document.documentElement.lang)).toBe('de');
      for (const place of PLACES) {
        await page.goto(`${running.url}/#/${place}`);
        await page.locator('main h1, main h2').first().waitFor();
        await expect.poll(() => page.getByText(hubDe.shell.loading).count(), LONG).toBe(0);
        const text = await shown(page);
        const found = english.filter((one) => standsIn(text, one));
        expect.soft(found, place).toEqual([]);
        expect.soft(WORDS.exec(text)?.[0], `${place}: ${text}`).toBeUndefined();
        const over = await page.evaluate(
          () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
        );
        expect.soft(over, place).toBeLessThanOrEqual(0);
      }
      expect(await seriousFindings(page)).toEqual([]);
    },
  );

  it('keeps the language, and says a refusal in it', async () => {
    const page = await visit('laptop');
    await page.goto(`${running.url}/#/account`);
    await page.getByLabel('Aktuelles Passwort').fill('wrong password');
    await page.getByLabel('Neues Passwort').fill('long enough, surely');
    await page.getByRole('button', { name: 'Passwort ändern' }).click();
    await page.getByText('Aktuelles Passwort: falsch.').waitFor();
  });
});
