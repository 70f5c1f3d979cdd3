import { type FileHandle, open, rename, rm, stat } from 'node:fs/promises';
import { SessionError } from '../../sessions/sessionError.ts';
import type { CliIo } from './command.ts';

/** Writes text to standard output, or to a file that stands there only when it is whole. */
export async function writeTo(
  out: string | undefined,
  io: CliIo,
  parts: AsyncIterable<string> | Iterable<string>,
): Promise<void> {
  if (out === undefined) {
    for await (const part of parts) await io.out(part);
    return;
  }
  const folder = await stat(out).then(
    (info) => info.isDirectory(),
    () => false,
  );
  if (folder) throw new SessionError('exists', `${out} is a folder: name a file`);
  const part = `${out}.part`;
  const file = await open(part, 'w').catch(refused(out));
  try {
    await writeAll(file, parts).finally(() => file.close());
    await rename(part, out).catch(refused(out));
  } catch (error) {
    await rm(part, { force: true });
    throw error;
  }
}

async function writeAll(file: FileHandle, parts: AsyncIterable<string> | Iterable<string>) {
  for await (const part of parts) await file.writeFile(part).catch(refused('the file'));
}

const WHY: Readonly<Record<string, string>> = {
  ENOENT: 'folder not found',
  ENOTDIR: 'a part of the path is a file',
  EACCES: 'the folder may not be written',
  EROFS: 'the disk is read-only',
  ENOSPC: 'the disk is full',
};

const refused =
  (path: string) =>
  (error: unknown): never => {
    const { code } = error as NodeJS.ErrnoException;
    const why = WHY[code ?? ''] ?? code ?? String(error);
    throw new SessionError('write-failed', `${path} cannot be written: ${why}`);
  };
