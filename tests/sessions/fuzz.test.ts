import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { SessionError } from '../../src/sessions/sessionError.ts';
import { type FileTree, readAll, scratch, soundFiles, writeTree } from './makeSession.ts';

const NAMES = Object.keys(soundFiles());

const edit = fc.record({
  at: fc.double({ min: 0, max: 0.9999, noNaN: true }),
  remove: fc.integer({ min: 0, max: 40 }),
  insert: fc.oneof(
    fc.constantFrom('\n', '\t', '\r\n', '-', '.', 'e', 'n/a', '1e999', '\0', ',', '"', '{'),
    fc.string({ maxLength: 6 }),
  ),
});

type Edit = typeof edit extends fc.Arbitrary<infer T> ? T : never;

function edited(bytes: Buffer, { at, remove, insert }: Edit): Buffer {
  const from = Math.floor(at * bytes.length);
  return Buffer.concat([
    bytes.subarray(0, from),
    Buffer.from(insert),
    bytes.subarray(from + remove),
  ]);
}

/** Either every sample is sound, or it is refused in words: nothing else may come of it. */
async function expectSoundOrRefused(path: string): Promise<void> {
  try {
    for (const input of (await readAll(path)).inputs) {
      if (input.kind === 'event') continue;
      const { timeS, acc, gyro, deviceTimeS, arrivalTimeS } = input.sample;
      const values = [timeS, acc.x, acc.y, acc.z, gyro.x, gyro.y, gyro.z];
      expect(values.every(Number.isFinite)).toBe(true);
      for (const time of [deviceTimeS, arrivalTimeS])
        expect(time === null || Number.isFinite(time)).toBe(true);
    }
  } catch (error) {
    if (!(error instanceof SessionError)) throw error;
    expect(error.message.length).toBeGreaterThan(10);
    expect(error.message).not.toMatch(/undefined|NaN/);
  }
}

describe('A session with anything done to it', () => {
  it('is read or refused in words, as a folder', async () => {
    const folder = scratch();
    const anywhere = fc.record({ name: fc.constantFrom(...NAMES), edit });
    await fc.assert(
      fc.asyncProperty(fc.array(anywhere, { minLength: 1, maxLength: 4 }), async (edits) => {
        const files: FileTree = soundFiles();
        for (const { name, edit: e } of edits)
          files[name] = edited(Buffer.from(files[name] as string | Buffer), e);
        await expectSoundOrRefused(writeTree(files, folder));
      }),
      { numRuns: 150 },
    );
  });

  it('is read or refused in words, as a zip', async () => {
    const path = join(scratch(), 'session.zip');
    const files = Object.entries(soundFiles()).map(([name, content]) => [
      name,
      new Uint8Array(Buffer.from(content)),
    ]);
    const zip = Buffer.from(zipSync(Object.fromEntries(files) as Record<string, Uint8Array>));
    await fc.assert(
      fc.asyncProperty(fc.array(edit, { minLength: 1, maxLength: 3 }), async (edits) => {
        writeFileSync(path, edits.reduce(edited, zip));
        await expectSoundOrRefused(path);
      }),
      { numRuns: 150 },
    );
  });
});
