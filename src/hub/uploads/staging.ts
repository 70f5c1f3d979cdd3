import { createHash } from 'node:crypto';
import { constants, createReadStream } from 'node:fs';
import { type FileHandle, open, stat } from 'node:fs/promises';
import type { Readable } from 'node:stream';
import { Refused } from '../../streaming/apiErrors.ts';

/** A sender that says nothing for so long has gone: the next one may go on. A choice, ms. */
const SILENT_MS = 15_000;

/** Bytes that have come; 0 where nothing has. */
export const bytesOf = async (path: string): Promise<number> =>
  (await stat(path).catch(() => null))?.size ?? 0;

/**
 * Writes what comes from `from` on, as it comes: what came before a cut stays.
 * @throws Refused where more comes than up to `most`, or the sender goes away.
 */
export async function append(
  body: Readable,
  path: string,
  from: number,
  most: number,
): Promise<void> {
  const file = await open(path, constants.O_RDWR | constants.O_CREAT, 0o600);
  const silent = setTimeout(() => body.destroy(new Error('nothing came')), SILENT_MS);
  let at = from;
  try {
    for await (const chunk of body.iterator({ destroyOnReturn: false }) as AsyncIterable<Buffer>) {
      silent.refresh();
      if (at + chunk.length > most) throw tooMuch();
      await writeAll(file, chunk, at);
      at += chunk.length;
    }
    await file.datasync();
  } catch (error) {
    if (error instanceof Refused || isDisk(error)) throw error;
    throw new Refused(400, 'cut', 'The upload was interrupted. Continue from where it stopped.');
  } finally {
    clearTimeout(silent);
    await file.close();
  }
}

const tooMuch = (): Refused => new Refused(413, 'too-large', 'More data was sent than announced.');

const isDisk = (error: unknown): boolean =>
  ['ENOSPC', 'EDQUOT', 'EIO', 'EROFS', 'EACCES'].includes(
    (error as NodeJS.ErrnoException).code ?? '',
  );

async function writeAll(file: FileHandle, chunk: Buffer, at: number): Promise<void> {
  for (let done = 0; done < chunk.length;) {
    const { bytesWritten } = await file.write(chunk, done, chunk.length - done, at + done);
    done += bytesWritten;
  }
}

/** SHA-256 of a file, hexadecimal. */
export async function sha256Of(path: string): Promise<string> {
  const hash = createHash('sha256');
  for await (const chunk of createReadStream(path, { highWaterMark: 256 * 1024 }))
    hash.update(chunk as Buffer);
  return hash.digest('hex');
}
