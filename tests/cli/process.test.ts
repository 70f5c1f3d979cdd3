import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { afterAll } from 'vitest';
import { writeSimulated } from '../sessions/simulated.ts';

const ROOT = join(import.meta.dirname, '../..');
const place = mkdtempSync(join(tmpdir(), 'stillcatch-process-'));
const session = join(place, 'session');

beforeAll(() => writeSimulated(session, { seed: 3, script: 'r' }));
afterAll(() => rmSync(place, { recursive: true, force: true }));

/** A process of its own, as a shell starts it. */
function run(args: readonly string[], readAtMost = Infinity) {
  const child = spawn(process.execPath, ['--import', 'tsx', 'src/main/cli.ts', ...args], {
    cwd: ROOT,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let out = '';
  let err = '';
  child.stdout.on('data', (chunk: Buffer) => {
    out += chunk.toString();
    if (out.length >= readAtMost) child.stdout.destroy();
  });
  child.stderr.on('data', (chunk: Buffer) => (err += chunk.toString()));
  return new Promise<{ code: number | null; out: string; err: string }>((resolve) => {
    child.on('close', (code) => resolve({ code, out, err }));
  });
}

describe('The program as a process', () => {
  it('ends quietly where its reader has seen enough', async () => {
    const { code, err } = await run(['convert', session, '--angles'], 100);
    expect([code, err]).toEqual([0, '']);
  });

  it('writes all of a long output into a pipe', async () => {
    const { code, out } = await run(['convert', session, '--angles']);
    expect(code).toBe(0);
    expect(out.endsWith('\n')).toBe(true);
    expect(out.split('\n').length).toBeGreaterThan(1000);
  });

  it('gives its exit code and keeps errors off standard output', async () => {
    expect(await run(['analyse', 'nothing-there'])).toEqual({
      code: 3,
      out: '',
      err: 'stillcatch: no file or folder named nothing-there.\n',
    });
  });
});
