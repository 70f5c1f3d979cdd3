import { mkdir, open, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { SessionError } from '../sessionError.ts';
import { ofTheDisk } from '../write/disk.ts';
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
        ? new SessionError('exists', 'the folder of this session is there already')
        : error;
    });
  } finally {
    await rm(part, { recursive: true, force: true });
    await files.close();
  }
}

/** @throws SessionError that names the file as it is called in the session, not where it was to lie */
async function copy(files: SessionFiles, name: string, to: string): Promise<void> {
  try {
    await write(files, name, to);
  } catch (error) {
    if (error instanceof SessionError) throw error;
    throw new SessionError('write-failed', ofTheDisk(error) ?? 'cannot be saved here', {
      file: name,
    });
  }
}

async function write(files: SessionFiles, name: string, to: string): Promise<void> {
  await mkdir(dirname(to), { recursive: true });
  const file = await open(to, 'wx');
  try {
    for await (const chunk of files.chunks(name)) await file.writeFile(chunk);
    await file.datasync();
  } finally {
    await file.close();
  }
}
