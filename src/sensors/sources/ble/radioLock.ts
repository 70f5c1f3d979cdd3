import { readFileSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** One adapter, one client: two services on one machine would steal each other's sensors. */
const lockFile = (): string =>
  process.env['STILLCATCH_RADIO_LOCK'] ?? join(tmpdir(), 'stillcatch-radio.lock');

/** The holder touches its file so often; one not touched for long is left over, whoever has its number now. */
const TOUCH_MS = 10_000;
const STALE_MS = 60_000;

function attempt(action: () => void): boolean {
  try {
    action();
    return true;
  } catch {
    return false;
  }
}

function alive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

function pidIn(file: string): number | null {
  try {
    const pid = Number.parseInt(readFileSync(file, 'utf8'), 10);
    return Number.isInteger(pid) && pid > 0 ? pid : null;
  } catch {
    return null;
  }
}

function holder(file: string): number | null {
  const pid = pidIn(file);
  if (pid === null || !alive(pid)) return null;
  const touchedMs = statSync(file, { throwIfNoEntry: false })?.mtimeMs ?? 0;
  return Date.now() - touchedMs < STALE_MS ? pid : null;
}

const write = (file: string): boolean =>
  attempt(() => writeFileSync(file, `${process.pid}\n`, { flag: 'wx' }));

function touch(file: string): void {
  const now = new Date();
  if (pidIn(file) === process.pid) attempt(() => utimesSync(file, now, now));
}

function keep(file: string): void {
  setInterval(() => touch(file), TOUCH_MS).unref();
  process.once('exit', () => {
    if (pidIn(file) === process.pid) rmSync(file, { force: true });
  });
}

/**
 * Takes the lock for the life of this process; one whose holder died is taken over. Where no file can be written there
 * is no lock, and nobody is kept from the sensors.
 * @returns `null`, or the living process that holds it
 */
export function takeRadioLock(file = lockFile()): number | null {
  if (!write(file)) {
    const pid = holder(file);
    if (pid !== null && pid !== process.pid) return pid;
    attempt(() => rmSync(file, { force: true }));
    if (!write(file)) return holder(file);
  }
  keep(file);
  return null;
}
