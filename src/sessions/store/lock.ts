import { readFile, rm, writeFile } from 'node:fs/promises';
import { uptime } from 'node:os';
import { SessionError } from '../sessionError.ts';
import { diskWords } from '../write/disk.ts';

interface Holder {
  readonly pid: number;
  /** Epoch s at which the machine was started: a pid means nothing after another start. */
  readonly bootS: number;
}

/** The clock may have been set meanwhile, s. */
const SAME_BOOT_S = 60;
const held = new Set<string>();

/**
 * Keeps a folder for this process. A holder that was killed does not count.
 * @returns gives the folder back.
 * @throws SessionError `in-use` where another process, or this one, has it.
 */
export async function lock(path: string): Promise<() => Promise<void>> {
  const mine: Holder = { pid: process.pid, bootS: Math.round(Date.now() / 1000 - uptime()) };
  if (held.has(path) || !(await take(path, mine)))
    throw new SessionError('in-use', 'the data folder is in use by another running Stillcatch');
  held.add(path);
  return async () => {
    held.delete(path);
    await rm(path, { force: true });
  };
}

async function take(path: string, mine: Holder): Promise<boolean> {
  const write = () => writeFile(path, JSON.stringify(mine), { flag: 'wx' });
  try {
    await write();
    return true;
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code !== 'EEXIST')
      throw new SessionError('write-failed', `${path} cannot be made: ${diskWords(error)}`);
  }
  if (await isAlive(path, mine)) return false;
  await rm(path, { force: true });
  return write().then(
    () => true,
    () => false,
  );
}

async function isAlive(path: string, mine: Holder): Promise<boolean> {
  const holder = await readHolder(path);
  if (typeof holder.pid !== 'number' || typeof holder.bootS !== 'number') return false;
  if (Math.abs(holder.bootS - mine.bootS) > SAME_BOOT_S) return false;
  if (holder.pid === mine.pid) return false; // an earlier process had the same number
  try {
    process.kill(holder.pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

async function readHolder(path: string): Promise<Partial<Holder>> {
  try {
    return JSON.parse(await readFile(path, 'utf8')) as Partial<Holder>;
  } catch {
    return {}; // cut off while it was written
  }
}
