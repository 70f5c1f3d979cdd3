import { mkdir } from 'node:fs/promises';
import { DISK_TEXTS, type DiskKey } from '../../practice/keepingTexts.ts';

/** Node says "no such folder" for a read-only disk where it makes several at once. */
export async function makeFolder(folder: string): Promise<void> {
  await mkdir(folder).catch(async (error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') await mkdir(folder, { recursive: true });
    else if (error.code !== 'EEXIST') throw error;
  });
}

const KEYS: Readonly<Record<string, DiskKey>> = {
  ENOSPC: 'full',
  EFBIG: 'large',
  EDQUOT: 'quota',
  EROFS: 'read-only',
  EACCES: 'denied',
  EPERM: 'denied',
  ENOENT: 'gone',
  EIO: 'broken',
};

/** Why the disk refused, in words. */
export function diskWords(error: unknown): string {
  const key = KEYS[(error as NodeJS.ErrnoException).code ?? ''];
  return key !== undefined ? DISK_TEXTS[key] : `the disk refuses (${(error as Error).message})`;
}
