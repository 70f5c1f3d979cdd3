import { mkdir } from 'node:fs/promises';

/** Node says "no such folder" for a read-only disk where it makes several at once. */
export async function makeFolder(folder: string): Promise<void> {
  await mkdir(folder).catch(async (error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') await mkdir(folder, { recursive: true });
    else if (error.code !== 'EEXIST') throw error;
  });
}

const DISK_WORDS: Readonly<Record<string, string>> = {
  ENOSPC: 'the disk is full',
  EFBIG: 'no file may be larger here',
  EDQUOT: 'the disk quota is used up',
  EROFS: 'the disk is read-only',
  EACCES: 'the folder may not be written: check its permissions',
  EPERM: 'the folder may not be written: check its permissions',
  ENOENT: 'the folder is gone',
  EIO: 'the disk reports an error',
};

/** Why the disk refused, in words. */
export function diskWords(error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code ?? '';
  return DISK_WORDS[code] ?? `the disk refuses (${(error as Error).message})`;
}
