// npm run make:pictures: the README's pictures, taken from the running page with a simulated student.
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { studentHost } from '../../src/main/studentHost.ts';
import { NOBODY, type Person } from '../../src/practice/person.ts';
import { SyntheticSource } from '../../src/sensors/sources/synthetic/index.ts';
import { openStore } from '../../src/sessions/store/store.ts';
import { openBrowser, openPage, startHost, startService } from './pageHarness.ts';
import { simulated } from './simulated.ts';

const folder = fileURLToPath(new URL('../../.pictures/', import.meta.url));
const recording = fileURLToPath(new URL('../../recordings/right-mixed.zip', import.meta.url));
mkdirSync(folder, { recursive: true });

const LONG = { timeout: 240_000 };
const browser = await openBrowser();
const darkroom = await browser.newPage();

/** Keeps what the page shows, as a webp of the page's own size. */
async function shoot(page: Page, name: string): Promise<void> {
  const png = (await page.screenshot()).toString('base64');
  const webp = await darkroom.evaluate<string>(`(async () => {
    const picture = new Image();
    picture.src = 'data:image/png;base64,${png}';
    await picture.decode();
    const canvas = new OffscreenCanvas(picture.width, picture.height);
    canvas.getContext('2d').drawImage(picture, 0, 0);
    const blob = await canvas.convertToBlob({ type: 'image/webp', quality: 0.85 });
    let bytes = '';
    for (const byte of new Uint8Array(await blob.arrayBuffer())) bytes += String.fromCharCode(byte);
    return btoa(bytes);
  })()`);
  const bytes = Buffer.from(webp, 'base64');
  writeFileSync(join(folder, `${name}.webp`), bytes);
  console.log(`${name}.webp ${(bytes.length / 1000).toFixed(0)} kB`);
}

/** A first practice from the straps to the summary, with demo sensors four times as fast as life. */
async function firstPractice(): Promise<void> {
  let person: Person = NOBODY;
  const script = 'r r b r r b r:losing-rotation r b r r b';
  const host = studentHost({
    first: { source: simulated(''), hand: 'right', kind: 'demo', close: async () => undefined },
    sourceFor: ({ hand }) =>
      new SyntheticSource({ seed: 4, hand, prompted: true, script, speed: 4 }),
    store: { read: () => person, write: (next) => void (person = next) },
    now: () => performance.now(),
    date: Date.now,
  });
  const service = await startHost(host);
  const { page, context } = await openPage(browser, `${service.url}#/today`);
  const press = (name: string) => page.getByRole('button', { name }).click(LONG);
  await press('Start a practice');
  await page.getByRole('heading', { name: 'Before you start' }).waitFor(LONG);
  for (const no of await page
    .locator('.question')
    .getByRole('button', { name: 'No', exact: true })
    .all())
    await no.click(LONG);
  for (const label of ['Space, shoes', 'I have warmed up']) await page.getByLabel(label).check();
  await page.locator('.rating').first().click();
  await press('Confirm');
  await page.getByRole('heading', { name: 'Put on both sensors' }).waitFor(LONG);
  await shoot(page, 'strap');
  await press('Both sensors are on');
  await press('Calibrate');
  await page.getByText('1 of 3').waitFor(LONG);
  await shoot(page, 'calibrate');
  await press('Not today');
  await page.locator('.strip li').nth(11).waitFor(LONG);
  await page.keyboard.press('e');
  await press('End it');
  await page.getByTestId('summary').waitFor(LONG);
  await shoot(page, 'after');
  await context.close();
  await service.end();
}

/** A practice under way, the pages around it, and a kept session. */
async function theRest(): Promise<void> {
  const store = await openStore(mkdtempSync(join(tmpdir(), 'stillcatch-pictures-')));
  const sessions = { store, problem: null, folder: '~/.stillcatch' };
  const service = await startService(simulated('r r b r:losing-rotation'), { sessions });
  const { page } = await openPage(browser, service.url);
  await page.locator('[data-mark="notPassed"]').first().waitFor(LONG);
  await shoot(page, 'practice');
  await page.goto(`${service.url}#/today`);
  await page.getByRole('button', { name: 'Start a practice' }).waitFor();
  await shoot(page, 'today');
  await page.goto(`${service.url}#/plan`);
  await page.locator('.plan-cards svg').nth(6).waitFor();
  await shoot(page, 'plan');
  await page.goto(`${service.url}#/sessions`);
  await page.locator('input[type=file]').setInputFiles(recording);
  await page.locator('.session-row a').first().click(LONG);
  await page.locator('.multiples li').first().waitFor(LONG);
  await shoot(page, 'session');
  await page.goto(`${page.url()}?repetition=2`);
  await page.getByRole('button', { name: /^Catch/ }).click(LONG);
  await shoot(page, 'repetition');
  await service.end();
  await store.close();
}

await firstPractice();
await theRest();
await browser.close();
