/** Frame time of the page in a real browser: `tsx tests/bench/frame.ts [seconds]`. */
import { pathToFileURL } from 'node:url';
import { percentile } from '../../src/math/stats.ts';
import { measureFrames } from '../browser/frames.ts';
import { openBrowser, openPage, startService } from '../browser/pageHarness.ts';
import { simulated } from '../browser/simulated.ts';

const BOUND_MS = 8;

const figures = (times: readonly number[]): string =>
  String(times.length).padStart(7) +
  [0.5, 0.95, 0.99]
    .map((p) => (percentile(times, p) ?? Number.NaN).toFixed(2).padStart(8))
    .join('');

export async function benchFrames(seconds: number): Promise<void> {
  const service = await startService(simulated(''));
  const browser = await openBrowser();
  const { page } = await openPage(browser, service.url);
  await page
    .locator('[data-testid="verdict"]:not([data-mark="none"])')
    .waitFor({ timeout: 60_000 });
  const { all, drawn } = await measureFrames(page, seconds);
  console.log(`browser frame, ms: n, median, p95, p99   (bound ${BOUND_MS} for the median)`);
  console.log(`  frames that draw the curves ${figures(drawn)}`);
  console.log(`  all frames                  ${figures(all)}`);
  await browser.close();
  await service.end();
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  await benchFrames(Number(process.argv[2] ?? 20));
  process.exit(0);
}
