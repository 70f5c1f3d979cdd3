import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { zipSync } from 'fflate';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { lookInto } from '../../../src/hub/uploads/look.ts';
import { STEM, soundFiles } from '../../sessions/makeSession.ts';
import { type TestHub, testHub } from '../testHub.ts';
import { sessionsOf, upload } from './sending.ts';

let hub: TestHub;
beforeEach(async () => {
  hub = await testHub();
});
afterEach(() => hub.close());

/** As many events as a recording may have. */
function costly(): Buffer {
  const files = soundFiles();
  const name = `${STEM}_events.tsv`;
  files[name] = `${String(files[name])}${'1\t0\tmark-tap\tn/a\n'.repeat(99_000)}`;
  const bytes = Object.entries(files).map(([n, c]) => [n, new Uint8Array(Buffer.from(c))]);
  return Buffer.from(
    zipSync(Object.fromEntries(bytes) as Record<string, Uint8Array>, { level: 0 }),
  );
}

/** How long this thread was busy, ms. */
async function busyMs(work: () => Promise<unknown>): Promise<number> {
  const before = performance.eventLoopUtilization();
  await work();
  return performance.eventLoopUtilization(before).active;
}

describe('a recording that is sent', () => {
  it('is read by another thread than the one that answers', async () => {
    const bytes = costly();
    const path = join(hub.context.places.uploads, 'here.zip');
    writeFileSync(path, bytes);
    await lookInto(path);
    const here = await busyMs(() => lookInto(path));
    await upload(hub, 'sue:machine', 'a1', bytes);
    const answering = await busyMs(() => upload(hub, 'sam:machine', 'a1', bytes));
    expect(await sessionsOf(hub, 'sam')).toHaveLength(1);
    expect(answering).toBeLessThan(here / 2);
  });
});
