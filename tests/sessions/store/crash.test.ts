import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/math/random.ts';
import { openSession } from '../../../src/sessions/openSession.ts';
import { readHere } from '../../../src/sessions/store/reading.ts';
import { type SessionStore, openStore } from '../../../src/sessions/store/store.ts';

const ROOT = join(import.meta.dirname, '../../..');
const ROUNDS = 20;
const LANES = 4;

interface Said {
  /** Time of the last row, s. */
  readonly last: number;
  /** The longest time that a busy machine let it stand, s: nothing can be written then. */
  readonly stoodS: number;
}

/** Starts a practice and kills it (no signal that it could hear) after a while; what it said last. */
function practiseUntilKilled(folder: string, afterMs: number): Promise<Said | null> {
  const child = spawn(
    process.execPath,
    ['--import', 'tsx', join(import.meta.dirname, 'practising.ts'), folder],
    { cwd: ROOT, stdio: ['ignore', 'pipe', 'inherit'] },
  );
  let said = '';
  child.stdout.on('data', (chunk: Buffer) => {
    if (said === '') setTimeout(() => child.kill('SIGKILL'), afterMs);
    said += chunk.toString();
  });
  return new Promise((resolve) => {
    child.on('close', () => {
      // the last line may be cut
      const [last, stoodS] = (said.split('\n').at(-2) ?? '').split(' ').map(Number);
      resolve(Number.isFinite(last) ? { last: last ?? 0, stoodS: stoodS ?? 0 } : null);
    });
  });
}

async function lastTimes(store: SessionStore, id: string): Promise<Record<string, number>> {
  const session = await openSession(store.folderOf(id));
  const last: Record<string, number> = {};
  for await (const batch of session.inputs())
    for (const input of batch)
      if (input.kind === 'sample') last[input.sample.sensor] = input.sample.timeS;
  await session.close();
  return last;
}

describe('A practice that is killed at a random moment', { timeout: 300_000 }, () => {
  const folders = Array.from({ length: LANES }, () =>
    mkdtempSync(join(tmpdir(), 'stillcatch-crash-')),
  );
  afterAll(() => {
    for (const folder of folders) rmSync(folder, { recursive: true, force: true });
  });

  it(`loses a second at most and nothing else, ${ROUNDS} times over`, async () => {
    const lanes = await Promise.all(
      Array.from({ length: LANES }, (_, lane) => killedRounds(folders[lane] as string, lane)),
    );
    const lost = lanes.flat();
    expect(lost.length).toBeGreaterThan(ROUNDS / 4);
    expect(Math.max(...lost)).toBeLessThanOrEqual(1);
    console.log(
      `lost at most ${Math.max(...lost).toFixed(2)} s; ${lost.length / 2} of ${ROUNDS} rounds were long enough to tell`,
    );
  });
});

/** Rounds in one data folder; what each sensor lost beside what the machine stood, s, where the practice had lasted over a second. */
async function killedRounds(folder: string, lane: number): Promise<number[]> {
  const random = seededRandom(lane);
  const lost: number[] = [];
  const seen = new Set<string>();
  for (let round = 0; round < ROUNDS / LANES; round++) {
    const said = await practiseUntilKilled(folder, Math.round(random() * 2500));
    const store = await openStore(folder, { reading: readHere });
    expect(store.repaired).toEqual([]);
    await store.recover();
    const sessions = await store.list();
    expect(sessions.every((s) => s.state === 'interrupted')).toBe(true);
    const fresh = sessions.filter((s) => !seen.has(s.id));
    expect(fresh.length).toBeLessThanOrEqual(1);
    for (const { id } of fresh) seen.add(id);
    if (said !== null && said.last > 1) {
      const times = await lastTimes(store, fresh[0]?.id ?? '');
      for (const sensor of ['chest', 'trailArm'])
        lost.push(said.last - (times[sensor] ?? 0) - said.stoodS);
    }
    await store.close();
  }
  return lost;
}
