import { mkdir, open, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { SessionError } from '../sessionError.ts';
import { openFiles } from './openFiles.ts';
import { LIMITS, type Limits, type SessionFiles } from './sessionFiles.ts';

/**
 * Copies a session (zip or folder) into the new folder `to`, with the wrapping folder taken off; nothing
 * stands there where it fails. Names were checked when it was opened.
 */
export async function unpackSession(from: string, to: string, limits: Limits = LIMITS) {
  const files = await openFiles(from, limits);
  const part = `${to}.part`;
  try {
    await rm(part, { recursive: true, force: true });
    for (const name of files.names) await copy(files, name, join(part, name));
    await rename(part, to).catch((error: NodeJS.ErrnoException) => {
      throw error.code === 'ENOTEMPTY' || error.code === 'EEXIST' || error.code === 'ENOTDIR'
        ? new SessionError('exists', `${to} is there already`)
        : error;
    });
  } finally {
    await rm(part, { recursive: true, force: true });
    await files.close();
  }
}

async function copy(files: SessionFiles, name: string, to: string): Promise<void> {
  await mkdir(dirname(to), { recursive: true });
  const file = await open(to, 'wx');
  try {
    for await (const chunk of files.chunks(name)) await file.writeFile(chunk);
    await file.datasync();
  } finally {
    await file.close();
  }
}
