import type { Page } from 'playwright-core';

/**
 * A callback that asks for the next frame first runs first in it; a posted message comes after the drawing.
 * Text, because it runs in the page.
 */
const RECORD_FRAMES = `
  const channel = new MessageChannel();
  let startedMs = 0;
  let drew = false;
  globalThis.frameTimes = [];
  globalThis.drawnTimes = [];
  const clear = CanvasRenderingContext2D.prototype.clearRect;
  CanvasRenderingContext2D.prototype.clearRect = function (...box) {
    drew = true;
    return clear.apply(this, box);
  };
  channel.port1.onmessage = () => {
    const ms = performance.now() - startedMs;
    globalThis.frameTimes.push(ms);
    if (drew) globalThis.drawnTimes.push(ms);
    drew = false;
  };
  requestAnimationFrame(function loop() {
    startedMs = performance.now();
    channel.port2.postMessage(0);
    requestAnimationFrame(loop);
  });`;

const take = (page: Page, name: 'frameTimes' | 'drawnTimes'): Promise<number[]> =>
  page.evaluate<number[]>(`globalThis.${name}.splice(0)`);

/**
 * Frame times of a page, ms: from the first callback of a frame to the end of its drawing on the main
 * thread (script, style, layout, paint); `drawn` are the frames in which the curves were drawn.
 */
export async function measureFrames(
  page: Page,
  seconds: number,
): Promise<{ readonly all: number[]; readonly drawn: number[] }> {
  await page.evaluate(RECORD_FRAMES);
  await page.waitForTimeout(1000);
  await take(page, 'frameTimes');
  await take(page, 'drawnTimes');
  await page.waitForTimeout(seconds * 1000);
  return { all: await take(page, 'frameTimes'), drawn: await take(page, 'drawnTimes') };
}
