import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openSession, requireCalibration } from '../../src/sessions/openSession.ts';

/**
 * Sessions of other writers: a simulator that is not this project's, and virtual sensors on optical
 * recordings of tennis players (CC BY-SA 3.0, doi 10.1007/978-3-319-52277-7_38). Not in the repository.
 */
const SHARED = join(import.meta.dirname, '../../../shared/datasets');
const FOLDERS = ['simulated-sessions', 'tennis-mocap-virtual-imu'].map((f) => join(SHARED, f));
const zips = FOLDERS.filter((f) => existsSync(f)).flatMap((f) =>
  readdirSync(f)
    .filter((n) => n.endsWith('.zip'))
    .map((n) => join(f, n)),
);

describe.skipIf(zips.length === 0)('Sessions of other writers (skipped without ../shared)', () => {
  it.each(zips)('%s is read from first to last row', async (path) => {
    const session = await openSession(path);
    requireCalibration(session);
    const counts = { chest: 0, trailArm: 0, club: 0 };
    let last = -Infinity;
    for await (const batch of session.inputs())
      for (const input of batch) {
        if (input.kind === 'event') continue;
        const { sample } = input;
        counts[sample.sensor]++;
        expect(sample.timeS).toBeGreaterThanOrEqual(last);
        last = sample.timeS;
        if (![sample.acc.x, sample.acc.y, sample.acc.z, sample.deviceTimeS].every(Number.isFinite))
          throw new Error(`not finite at ${sample.timeS}`);
      }
    expect(session.notes()).toEqual([]);
    for (const [role, count] of Object.entries(counts)) {
      const name = session.files.names.find((n) => n.endsWith(`tracksys-${role}_motion.tsv`));
      expect(count).toBe(name === undefined ? 0 : await linesOf(session, name));
    }
    await session.close();
  });

  it('are of the hands that their descriptions say', async () => {
    const hands: Record<string, string> = {};
    for (const path of zips.filter((z) => z.includes('simulated-sessions'))) {
      const session = await openSession(path);
      hands[session.header.subject] = session.header.hand;
      await session.close();
    }
    expect(hands).toEqual({ H11: 'right', H12: 'left', H13: 'right' });
  });
});

async function linesOf(session: Awaited<ReturnType<typeof openSession>>, name: string) {
  let lines = 0;
  for await (const chunk of session.files.chunks(name))
    for (const byte of chunk) if (byte === 10) lines++;
  return lines;
}
