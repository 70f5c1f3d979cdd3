// chartjs/Chart.js#3436: update takes 20-30 ms at 1 000 points.
import { expect, it } from 'vitest';
import { median } from '../../src/math/stats.ts';
import { measureFrames } from './frames.ts';
import { openBrowser, openPage, startService } from './pageHarness.ts';
import { simulated } from './simulated.ts';

it('draws a full window of curves; the median frame is printed beside its bound', async () => {
  const service = await startService(simulated(''));
  const browser = await openBrowser();
  const { page, complaints } = await openPage(browser, service.url);
  await page.locator('[data-testid="verdict"]:not([data-mark="none"])').waitFor();
  const { timeS } = service.practice.view().curve;
  expect(timeS.length).toBeLessThanOrEqual(600);
  expect(timeS.length).toBeGreaterThan(300);
  const { drawn } = await measureFrames(page, 5);
  expect(drawn.length).toBeGreaterThan(0);
  console.log(`median frame ${median(drawn)?.toFixed(1)} ms of ${drawn.length} (bound 8 ms)`);
  expect(complaints).toEqual([]);
  await browser.close();
  await service.end();
});
