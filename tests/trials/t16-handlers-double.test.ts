// socketio/socket.io#758: handlers double after reconnects.
import { expect, it } from 'vitest';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { openPage, next, service } from '../streaming/pages.ts';

it('after three reconnects a command is obeyed once and a batch is sent once', async () => {
  const running = await service([]);
  const page = openPage(running.url);
  await next(page, 'snapshot');
  for (let i = 0; i < 3; i++) {
    const again = next(page, 'snapshot');
    page.io.engine.close();
    await again;
  }
  let marks = 0;
  running.practice.signals.subscribe(({ kind }) => {
    if (kind === 'event') marks += 1;
  });
  let batches = 0;
  page.on('batch', () => (batches += 1));
  expect(await page.emitWithAck('command', { type: 'pause' })).toEqual({ ok: true });
  expect(marks).toBe(1);
  const batch = next(page, 'batch');
  running.source.packets(1);
  await batch;
  expect(batches).toBe(1);
  expect(running.practice.view().plan).toBe(DEFAULT_PLAN);
  page.disconnect();
  await running.end();
});
