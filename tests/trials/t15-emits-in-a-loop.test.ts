// socketio/socket.io#3350: volatile emits in a loop, only the first arrives.
import { expect, it } from 'vitest';
import { phase, rehearsal } from '../practice/scripted.ts';
import { next, openPage, service, wait } from '../streaming/pages.ts';

it('everything that follows from one packet arrives, in one batch', async () => {
  const repetitions = Array.from(
    { length: 20 },
    (_, i) => [5, { kind: 'repetition', others: [], repetition: rehearsal(i + 1) }] as const,
  );
  const running = await service([...repetitions, [5, phase('caught', 5)]]);
  const page = openPage(running.url);
  await next(page, 'snapshot');
  let batches = 0;
  page.on('batch', () => (batches += 1));
  const first = next(page, 'batch');
  running.source.packets(5);
  const { sections } = await first;
  expect(sections.strip?.map((entry) => entry.index)).toEqual(repetitions.map((_r, i) => i + 1));
  expect(sections.phase?.phase).toBe('caught');
  expect(sections.last?.index).toBe(20);
  await wait(150);
  expect(batches).toBe(1);
  page.disconnect();
  await running.end();
});
