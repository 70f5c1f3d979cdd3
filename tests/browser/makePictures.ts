// npm run make:pictures: the README's pictures, taken from the running page with a simulated student.
import { mkdirSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openStore } from '../../src/sessions/store/store.ts';
import { openBrowser, openPage, startService } from './pageHarness.ts';
import { simulated } from './simulated.ts';

const folder = fileURLToPath(new URL('../../.pictures/', import.meta.url));
const recording = fileURLToPath(new URL('../../recordings/right-mixed.zip', import.meta.url));
mkdirSync(folder, { recursive: true });

const store = await openStore(mkdtempSync(join(tmpdir(), 'stillcatch-pictures-')));
const sessions = { store, problem: null, folder: '~/.stillcatch' };
const service = await startService(simulated('r r b r:losing-rotation'), { sessions });
const browser = await openBrowser();
const { page } = await openPage(browser, service.url);
const shoot = (name: string) => page.screenshot({ path: join(folder, `${name}.png`) });

await page.locator('[data-mark="notPassed"]').first().waitFor({ timeout: 120_000 });
await shoot('practice');
await page.goto(`${service.url}#/today`);
await page.getByRole('button', { name: 'Start a practice' }).waitFor();
await shoot('today');
await page.goto(`${service.url}#/plan`);
await page.getByRole('heading', { name: 'Change the plan' }).waitFor();
await shoot('plan');
await page.goto(`${service.url}#/sessions`);
await page.locator('input[type=file]').setInputFiles(recording);
await page.locator('.session-row a').first().click({ timeout: 30_000 });
await page.locator('tbody tr').first().waitFor();
await shoot('session');
await page.goto(`${page.url()}?repetition=2`);
await page.getByRole('button', { name: /^Catch/ }).click({ timeout: 30_000 });
await shoot('repetition');

await browser.close();
await service.end();
await store.close();
