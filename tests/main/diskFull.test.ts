import { execFileSync } from 'node:child_process';
import { chmodSync, chownSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { analyseSession } from '../../src/sessions/analyseSession.ts';
import { openSession } from '../../src/sessions/openSession.ts';
import { openStore } from '../../src/sessions/store/store.ts';
import { scratch } from '../sessions/makeSession.ts';
import { smallDisk } from '../sessions/store/smallDisk.ts';
import { realService } from './realService.ts';

/** As fast as a small machine analyses with room to spare. */
const SPEED = 20;
const PATIENCE = { timeout: 240_000, interval: 50 };
const NOBODY = 65_534;

/** A folder that takes about 1.5 MB, and how it takes more again. A limit on the size of files where no disk can be mounted. */
function limited() {
  const disk = smallDisk('size=1500k');
  if (disk !== null) {
    const more = () => execFileSync('mount', ['-o', 'remount,size=200m', disk]);
    return { root: disk, limit: () => undefined, more };
  }
  const limit = (pid: number, bytes: string) =>
    execFileSync('prlimit', ['--pid', `${pid}`, `--fsize=${bytes}:unlimited`]);
  return {
    root: scratch(),
    limit: (pid: number) => limit(pid, '600000'),
    more: (pid: number) => limit(pid, 'unlimited'),
  };
}

const motionOf = (root: string): Map<string, Buffer> =>
  new Map(
    readdirSync(root, { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('_motion.tsv'))
      .map((name) => [name, readFileSync(join(root, name))]),
  );

describe('The whole service', () => {
  it('goes on where the disk becomes full, says so, and keeps all once there is room', async () => {
    const { root, limit, more } = limited();
    const service = await realService(root, SPEED);
    limit(service.pid);
    const { view } = service;
    const problem = () => view().keeping?.problem ?? '';
    await vi.waitFor(
      () =>
        expect(problem()).toMatch(/cannot be saved now: .* You can continue\. It stays in memory/),
      PATIENCE,
    );
    const { rehearsals } = view().ledger;
    const written = motionOf(root);
    await vi.waitFor(() => expect(view().ledger.rehearsals).toBeGreaterThan(rehearsals), PATIENCE);
    expect((await fetch(`${service.url}api/sessions`)).status).toBe(200);
    more(service.pid);
    await vi.waitFor(() => expect(problem()).toBe(''), PATIENCE);
    expect(view().keeping?.restored).toMatch(/saved completely, from its start/);
    for (const [name, before] of written) {
      const after = readFileSync(join(root, name));
      expect(after.subarray(0, before.length).equals(before), name).toBe(true);
    }
    await service.end('SIGTERM');
    const store = await openStore(root);
    onTestFinished(() => store.close());
    const id = view().keeping?.sessionId ?? '';
    const kept = await store.get(id);
    expect(kept).toMatchObject({ state: 'complete', problem: null });
    expect(kept!.rehearsals).toBeGreaterThanOrEqual(view().ledger.rehearsals);
    const recorded = await openSession(store.folderOf(id));
    onTestFinished(() => recorded.close());
    const again = await analyseSession(recorded, kept!.plan);
    expect(again.repetitions).toHaveLength(kept!.repetitions.length);
  });

  it('practises on a disk that may only be read, and says that nothing is kept', async ({
    skip,
  }) => {
    const disk = smallDisk('size=1500k');
    if (disk !== null) execFileSync('mount', ['-o', 'remount,ro', disk]);
    const root = disk ?? scratch();
    const asRoot = process.getuid?.() === 0;
    if (disk === null) chmodSync(root, 0o555);
    // root may write anywhere: where it may not mount, the service runs as nobody
    if (disk === null && asRoot) chownSync(root, NOBODY, NOBODY);
    const as = disk === null && asRoot ? { uid: NOBODY, gid: NOBODY } : {};
    const service = await realService(root, SPEED, as).catch((error: unknown) =>
      skip(`the service cannot run as another user here: ${String(error)}`),
    );
    await vi.waitFor(() => expect(service.view().ledger.rehearsals).toBeGreaterThan(0), PATIENCE);
    expect(service.view().keeping?.problem).toMatch(/not being saved: .*(read-only|permission)/);
    expect(service.said()).toContain('not being saved');
    const reply = await fetch(`${service.url}api/sessions`);
    expect(reply.status).toBe(503);
    expect(await reply.text()).toContain('not being saved');
    await service.end('SIGTERM');
  });
});
