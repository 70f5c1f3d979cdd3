import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** One adapter, one client: two services on one machine would steal each other's sensors. */
const lockFile = (): string =>
  process.env['STILLCATCH_RADIO_LOCK'] ?? join(tmpdir(), 'stillcatch-radio.lock');

function alive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

function holder(file: string): number | null {
  try {
    const pid = Number.parseInt(readFileSync(file, 'utf8'), 10);
    return Number.isInteger(pid) && pid > 0 && alive(pid) ? pid : null;
  } catch {
    return null;
  }
}

function write(file: string): boolean {
  try {
    writeFileSync(file, `${process.pid}\n`, { flag: 'wx' });
    return true;
  } catch {
    return false;
  }
}

/**
 * Takes the lock for the life of this process; a lock whose holder died is taken over.
 * @returns `null` when taken, else the process that holds it (0 where the file cannot be written at all)
 */
export function takeRadioLock(file = lockFile()): number | null {
  if (!write(file)) {
    const pid = holder(file);
    if (pid !== null && pid !== process.pid) return pid;
    rmSync(file, { force: true });
    if (!write(file)) return holder(file) ?? 0;
  }
  process.once('exit', () => {
    if (holder(file) === process.pid) rmSync(file, { force: true });
  });
  return null;
}
