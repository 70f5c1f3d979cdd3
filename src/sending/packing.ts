import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { mkdir, open, readdir, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { SessionStore } from '../sessions/store/store.ts';

/** A session as one file, ready to be sent. */
export interface Packed {
  readonly path: string;
  readonly bytes: number;
  readonly sha256: string;
}

/** Packs a session, or takes the file that an earlier run of the program has left: its bytes must stay the same. */
export async function pack(store: SessionStore, folder: string, id: string): Promise<Packed> {
  const path = join(folder, `${id}.zip`);
  await mkdir(folder, { recursive: true, mode: 0o700 });
  if ((await stat(path).catch(() => null)) === null) await store.exportZip(id, path);
  const hash = createHash('sha256');
  for await (const chunk of createReadStream(path, { highWaterMark: 256 * 1024 }))
    hash.update(chunk as Buffer);
  return { path, bytes: (await stat(path)).size, sha256: hash.digest('hex') };
}

export const unpack = (folder: string, id: string): Promise<void> =>
  rm(join(folder, `${id}.zip`), { force: true });

/** Files of sessions that are not to be sent any more. */
export async function tidyPacked(folder: string, wanted: ReadonlySet<string>): Promise<void> {
  for (const name of await readdir(folder).catch(() => []))
    if (!wanted.has(name.replace(/\.zip$/, ''))) await rm(join(folder, name), { force: true });
}

/** At most `most` bytes from `offset` on. */
export async function piece(
  path: string,
  offset: number,
  most: number,
): Promise<Uint8Array<ArrayBuffer>> {
  const file = await open(path, 'r');
  try {
    const buffer = Buffer.alloc(most);
    const { bytesRead } = await file.read(buffer, 0, most, offset);
    return buffer.subarray(0, bytesRead);
  } finally {
    await file.close();
  }
}
