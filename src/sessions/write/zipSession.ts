import { type FileHandle, open, rename, rm } from 'node:fs/promises';
import { Readable } from 'node:stream';
import { createDeflateRaw } from 'node:zlib';
import { Zip, type ZipInputFile } from 'fflate';
import { crc32 } from '../files/crc32.ts';
import { openFiles } from '../files/openFiles.ts';
import { CHUNK_BYTES, type SessionFiles } from '../files/sessionFiles.ts';

/** The same session gives the same zip, byte for byte: zip's first day. */
const STAMP = new Date(1980, 0, 1);
const DEFLATED = 8;

/** Packs a session folder into the zip `out`; nothing stands there where it fails. */
export async function zipSession(folder: string, out: string): Promise<void> {
  const files = await openFiles(folder);
  const part = `${out}.part`;
  try {
    const file = await open(part, 'w');
    try {
      await pack(files, file);
      await file.datasync();
    } finally {
      await file.close();
    }
    await rename(part, out);
  } catch (error) {
    await rm(part, { force: true });
    throw error;
  } finally {
    await files.close();
  }
}

/** Deflated off the main thread by zlib; fflate writes the zip's own records. */
async function pack(files: SessionFiles, file: FileHandle): Promise<void> {
  let ready: Uint8Array[] = [];
  let failed: Error | null = null;
  const zip = new Zip((error, bytes) => {
    failed = error ?? failed;
    ready.push(bytes);
  });
  const drain = async () => {
    if (failed !== null) throw failed;
    const parts = ready;
    ready = [];
    for (const bytes of parts) await file.writeFile(bytes);
  };
  for (const name of files.names.filter((n) => !n.endsWith('.part'))) {
    const entry: ZipInputFile = { filename: name, size: 0, crc: 0, compression: DEFLATED };
    entry.mtime = STAMP;
    zip.add(entry);
    for await (const packed of deflated(files, name, entry)) {
      entry.ondata?.(null, new Uint8Array(packed), false);
      await drain();
    }
    entry.ondata?.(null, new Uint8Array(0), true);
    await drain();
  }
  zip.end();
  await drain();
}

/** Packed bytes of one file; its size and checksum are counted into `entry` on the way. */
function deflated(
  files: SessionFiles,
  name: string,
  entry: ZipInputFile,
): AsyncIterable<Uint8Array> {
  async function* counted() {
    for await (const chunk of files.chunks(name)) {
      entry.size += chunk.length;
      entry.crc = crc32(chunk, entry.crc);
      // copied: the stream holds on to what the reader will use again
      yield Buffer.from(chunk);
    }
  }
  const source = Readable.from(counted(), { objectMode: true, highWaterMark: 2 });
  const deflate = createDeflateRaw({ level: 6, chunkSize: CHUNK_BYTES });
  source.on('error', (error) => deflate.destroy(error));
  return source.pipe(deflate);
}
