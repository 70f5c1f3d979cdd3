import { createWriteStream } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { Refused } from './apiErrors.ts';
import { MAX_IMPORT_BYTES } from './sessionsContract.ts';

export const tooLarge = (mostBytes = MAX_IMPORT_BYTES): Refused =>
  new Refused(413, 'too-large', `The file is larger than ${mostBytes / 1024 / 1024} MB.`);

/** Gives `work` a path in a folder of its own that is gone afterwards. */
export async function inScratch<T>(name: string, work: (path: string) => Promise<T>): Promise<T> {
  const folder = await mkdtemp(join(tmpdir(), 'stillcatch-'));
  try {
    return await work(join(folder, name));
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

async function* bounded(source: Readable, mostBytes: number): AsyncGenerator<Buffer> {
  let bytes = 0;
  // Not destroyed where it is too large: the refusal still has to go out on the same connection.
  for await (const chunk of source.iterator({ destroyOnReturn: false }) as AsyncIterable<Buffer>) {
    bytes += chunk.length;
    if (bytes > mostBytes) throw tooLarge(mostBytes);
    yield chunk;
  }
  if (bytes === 0) throw new Refused(400, 'empty', 'No file received.');
}

/** Streams what was sent to the file `path`. What comes after a refusal is let go by, so that the connection ends. */
export async function receive(body: Readable, path: string, mostBytes = MAX_IMPORT_BYTES) {
  try {
    await pipeline(bounded(body, mostBytes), createWriteStream(path));
  } finally {
    body.resume();
  }
}
