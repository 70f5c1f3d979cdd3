import { createReadStream } from 'node:fs';
import { Readable } from 'node:stream';
import { createInflateRaw } from 'node:zlib';
import { type Entry, type ZipFile, openPromise } from 'yauzl';
import { SessionError } from '../sessionError.ts';
import { crc32 } from './crc32.ts';
import { checkName } from './names.ts';
import { CHUNK_BYTES, LIMITS, type Limits, type SessionFiles } from './sessionFiles.ts';

const STORED = 0;
const DEFLATED = 8;
const LINK = 0o120000;
const FORMAT = 0o170000;
/** Below this size a high ratio is no danger and happens to empty tables; files that share their bytes show in the sum. */
const RATIO_FROM = 2 ** 20;

/** Reads the central directory and refuses what an honest session never holds; nothing is unpacked to disk. */
export async function openZip(path: string, limits: Limits = LIMITS): Promise<SessionFiles> {
  const zip = await openPromise(path, { autoClose: false, strictFileNames: true }).catch(notAZip);
  const entries = await directory(zip, limits).catch((error: unknown) => {
    zip.close();
    throw asSessionError(error);
  });
  return {
    label: path,
    names: [...entries.keys()].sort(),
    size: (name) => entries.get(name)?.uncompressedSize ?? 0,
    chunks: (name) => unpacked({ path, directory: zip }, entries.get(name), name),
    close: () => Promise.resolve(zip.close()),
  };
}

function notAZip(error: unknown): never {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === 'EACCES' || code === 'EPERM')
    throw new SessionError('not-found', 'the file may not be read: check its permissions');
  throw new SessionError('not-a-zip', 'this is not a zip file, or it is cut short');
}

async function directory(zip: ZipFile, limits: Limits): Promise<Map<string, Entry>> {
  if (zip.entryCount > limits.entries)
    throw new SessionError('zip-limit', `the zip holds ${zip.entryCount} files, far too many`);
  const entries = new Map<string, Entry>();
  const seen = new Set<string>();
  const folders = new Set<string>();
  let total = 0;
  for await (const entry of zip.eachEntry()) {
    checkName(entry.fileName);
    const key = keyOf(entry.fileName);
    if (seen.has(key))
      throw new SessionError('duplicate-name', 'appears twice in the zip', {
        file: entry.fileName,
      });
    seen.add(key);
    for (const folder of foldersOf(key)) folders.add(folder);
    total += entry.uncompressedSize;
    check(entry, total, limits);
    if (total > RATIO_FROM && total > limits.ratio * zip.fileSize) refuseBomb(entry);
    if (!entry.fileName.endsWith('/')) entries.set(entry.fileName, entry);
  }
  for (const name of entries.keys())
    if (folders.has(keyOf(name)))
      throw new SessionError('duplicate-name', 'is a file and a folder in the zip', { file: name });
  return entries;
}

/** Names that some systems take for the same. */
const keyOf = (name: string): string => name.normalize('NFC').toLowerCase();

const foldersOf = (path: string): readonly string[] =>
  [...path.matchAll(/\//g)].map(({ index }) => path.slice(0, index));

function check(entry: Entry, total: number, limits: Limits): void {
  const refuse = (code: 'unsafe-path' | 'zip-limit' | 'zip-damaged', what: string): never => {
    throw new SessionError(code, what, { file: entry.fileName });
  };
  const size = entry.uncompressedSize;
  if (((entry.externalFileAttributes >>> 16) & FORMAT) === LINK)
    refuse('unsafe-path', 'a link, which a session never holds');
  if (entry.isEncrypted()) refuse('zip-damaged', 'is encrypted: zip it again without a password');
  if (entry.compressionMethod !== STORED && entry.compressionMethod !== DEFLATED)
    refuse('zip-damaged', 'is packed in a way that is not supported: use plain deflate');
  if (size > limits.fileBytes || total > limits.totalBytes)
    refuse('zip-limit', 'unpacks to more than a session can hold');
  if (size > RATIO_FROM && size > limits.ratio * entry.compressedSize) refuseBomb(entry);
}

function refuseBomb({ fileName: file }: Entry): never {
  const what = 'unpacks to far more than sensor data can: this looks like a zip bomb';
  throw new SessionError('zip-limit', what, { file });
}

function asSessionError(error: unknown): SessionError {
  if (error instanceof SessionError) return error;
  const text = error instanceof Error ? error.message : String(error);
  return /relative path|absolute path|invalid characters/.test(text)
    ? new SessionError('unsafe-path', `the zip holds a file name that leads out of it (${text})`)
    : new SessionError('zip-damaged', `the zip is damaged (${text})`);
}

interface OpenZip {
  readonly path: string;
  readonly directory: ZipFile;
}

async function* unpacked(
  zip: OpenZip,
  entry: Entry | undefined,
  name: string,
): AsyncGenerator<Uint8Array> {
  if (entry === undefined)
    throw new SessionError('missing-file', 'is not in the zip', { file: name });
  const damaged = (why: string): SessionError =>
    new SessionError('zip-damaged', `the zip is damaged here (${why})`, { file: name });
  let size = 0;
  let sum = 0;
  try {
    for await (const chunk of await bytesOf(zip, entry)) {
      size += chunk.length;
      if (size > entry.uncompressedSize) throw damaged('more data than stated');
      sum = crc32(chunk, sum);
      yield chunk;
    }
  } catch (error) {
    throw error instanceof SessionError ? error : damaged((error as Error).message);
  }
  if (size !== entry.uncompressedSize || sum !== entry.crc32) throw damaged('the checksum differs');
}

/**
 * Packed bytes through zlib in large chunks: its default of 16 KiB costs a turn of the event loop each.
 * Read by Node's own stream: that of yauzl cannot be left half-way.
 */
async function bytesOf(zip: OpenZip, entry: Entry): Promise<AsyncIterable<Uint8Array>> {
  if (entry.compressedSize === 0) return Readable.from([]);
  const { fileDataStart: start } = await zip.directory.readLocalFileHeaderPromise(entry, {
    minimal: true,
  });
  const end = start + entry.compressedSize - 1;
  const raw = createReadStream(zip.path, { start, end, highWaterMark: CHUNK_BYTES });
  if (entry.compressionMethod === STORED) return raw;
  const inflate = createInflateRaw({ chunkSize: CHUNK_BYTES });
  raw.on('error', (error) => inflate.destroy(error));
  inflate.on('close', () => raw.destroy());
  return raw.pipe(inflate);
}
