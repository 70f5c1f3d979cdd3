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

const codeOf = (error: unknown): string => String((error as { code?: unknown } | null)?.code ?? '');

/** There is no room for what was to be written, whether a file or a row. */
export const isFull = (error: unknown): boolean =>
  ['ENOSPC', 'EDQUOT', 'SQLITE_FULL'].includes(codeOf(error)) ||
  (error instanceof Error && /database or disk is full/.test(error.message));

/** The same words where it is the disk that refused, which name no path; else `null`. */
export const ofTheDisk = (error: unknown): string | null =>
  isFull(error) ? DISK_TEXTS.full : codeOf(error) in KEYS ? diskWords(error) : null;

/** Why the disk refused, in words. */
export function diskWords(error: unknown): string {
  const key = KEYS[(error as NodeJS.ErrnoException).code ?? ''];
  return key !== undefined ? DISK_TEXTS[key] : `the disk refuses (${(error as Error).message})`;
}
