import { existsSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { analyseSession } from '../../src/sessions/analyseSession.ts';
import { writeClockFits } from '../../src/sessions/clockFits.ts';
import { writeAnalysis, writePlan } from '../../src/sessions/derivatives.ts';
import { unpackSession } from '../../src/sessions/files/unpack.ts';
import { openSession } from '../../src/sessions/openSession.ts';
import { createSessionWriter } from '../../src/sessions/write/sessionWriter.ts';
import { bidsValidator, validate } from './bidsValidator.ts';
import { scratch } from './makeSession.ts';
import { writeSimulated } from './simulated.ts';

const RECORDINGS = join(import.meta.dirname, '../../recordings');
const recordings = existsSync(RECORDINGS)
  ? readdirSync(RECORDINGS, { withFileTypes: true })
      .filter((e) => e.isDirectory() || e.name.endsWith('.zip'))
      .map((e) => e.name)
  : [];

let program: string | null = null;
beforeAll(async () => {
  program = await bidsValidator();
}, 120_000);

/** Skips in words where the validator cannot be had. */
function needsValidator(skip: (note: string) => never): string {
  return program ?? skip('the registry cannot be reached, so there is no official validator');
}

describe('The official BIDS validator', { timeout: 600_000 }, () => {
  it('finds nothing in a written session with its derivatives', async ({ skip }) => {
    const validator = needsValidator(skip);
    const folder = join(scratch(), 'session');
    await writeSimulated(folder, { seed: 2, script: 'r' });
    const session = await openSession(folder);
    await writePlan(folder, DEFAULT_PLAN);
    await writeAnalysis(folder, await analyseSession(session, DEFAULT_PLAN));
    await writeClockFits(folder, await session.clockFits());
    await session.close();
    expect(await validate(validator, folder)).toEqual({ errors: [], warnings: ['113 NO_AUTHORS'] });
  });

  it('finds no error in a session that is one flush old', async ({ skip }) => {
    const validator = needsValidator(skip);
    const folder = scratch();
    const writer = await createSessionWriter(
      folder,
      { subject: '1', session: '1', hand: 'left', startedAt: '2026-03-01T10:00:00' },
      { flushEveryMs: 0 },
    );
    for (const sensor of ['chest', 'trailArm'] as const)
      writer.sample({
        sensor,
        timeS: 0.01,
        acc: { x: 0, y: 0, z: 9.81 },
        gyro: { x: 0, y: 0, z: 0 },
        deviceTimeS: null,
        arrivalTimeS: null,
        saturated: false,
      });
    await writer.flush();
    expect((await validate(validator, folder)).errors).toEqual([]);
    await writer.close();
  });

  it('does find what is wrong', async ({ skip }) => {
    const validator = needsValidator(skip);
    const folder = join(scratch(), 'session');
    await writeSimulated(folder, { seed: 2, script: '' });
    writeFileSync(join(folder, 'dataset_description.json'), '{"Name":"x"}');
    writeFileSync(join(folder, 'stray.tsv'), 'a\tb\n');
    const { errors } = await validate(validator, folder);
    expect(errors.length).toBeGreaterThanOrEqual(2);
  });

  it.each(recordings)('finds no error in recordings/%s', async (name) => {
    if (program === null) return;
    const folder = join(scratch(), 'session');
    await unpackSession(join(RECORDINGS, name), folder);
    expect((await validate(program, folder)).errors).toEqual([]);
  });
});
