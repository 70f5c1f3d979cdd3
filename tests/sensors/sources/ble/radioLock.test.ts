import { spawn, spawnSync } from 'node:child_process';
import {
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, onTestFinished, vi } from 'vitest';
import { takeRadioLock } from '../../../../src/sensors/sources/ble/radioLock.ts';

describe('the lock of the radio', () => {
  let folder: string;
  let file: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'stillcatch-'));
    file = join(folder, 'lock');
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  const held = (): string => readFileSync(file, 'utf8').trim();
  const someone = (): number => {
    const child = spawn(process.execPath, ['-e', 'setInterval(() => {}, 1000)']);
    onTestFinished(() => void child.kill('SIGKILL'));
    return child.pid ?? 0;
  };

  it('is taken, and refused to others while its holder lives', () => {
    expect(takeRadioLock(file)).toBeNull();
    expect(held()).toBe(`${process.pid}`);
    const other = someone();
    writeFileSync(file, `${other}\n`);
    expect(takeRadioLock(file)).toBe(other);
  });

  it('of a process that died is taken over', () => {
    const { pid } = spawnSync(process.execPath, ['-e', '']);
    writeFileSync(file, `${pid}\n`);
    expect(takeRadioLock(file)).toBeNull();
    expect(held()).toBe(`${process.pid}`);
  });

  it('whose number has gone to another process since is taken over', () => {
    writeFileSync(file, `${someone()}\n`);
    const hourAgo = Date.now() / 1000 - 3600;
    utimesSync(file, hourAgo, hourAgo);
    expect(takeRadioLock(file)).toBeNull();
  });

  it('is kept fresh by its holder', () => {
    vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
    onTestFinished(() => void vi.useRealTimers());
    takeRadioLock(file);
    // a computer that slept
    const hourAgo = Date.now() / 1000 - 3600;
    utimesSync(file, hourAgo, hourAgo);
    vi.advanceTimersByTime(10_000);
    expect(Date.now() - statSync(file).mtimeMs).toBeLessThan(30_000);
  });

  it('that cannot be written keeps nobody from the sensors', () => {
    expect(takeRadioLock(join(folder, 'no', 'such', 'folder', 'lock'))).toBeNull();
    // nor one that cannot be removed, as another account's is
    mkdirSync(file);
    expect(takeRadioLock(file)).toBeNull();
  });
});
