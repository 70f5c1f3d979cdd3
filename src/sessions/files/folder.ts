import { open, readdir, realpath, stat } from 'node:fs/promises';
import { join, sep } from 'node:path';
import { SessionError } from '../sessionError.ts';
import { checkName } from './names.ts';
import { CHUNK_BYTES, LIMITS, type Limits, type SessionFiles } from './sessionFiles.ts';

/** `root/derivatives/stillcatch/x` is the deepest file of a session, one folder more where it was unpacked. */
const DEPTH = 6;

/** Links are followed only where they stay inside the folder. */
export async function openFolder(path: string, limits: Limits = LIMITS): Promise<SessionFiles> {
  const root = await realpath(path);
  const sizes = new Map<string, number>();
  await list(root, '', 0, { sizes, limits });
  return {
    label: path,
    names: [...sizes.keys()].sort(),
    size: (name) => sizes.get(name) ?? 0,
    chunks: (name) => fileChunks(join(root, name)),
    close: () => Promise.resolve(),
  };
}

interface Listing {
  readonly sizes: Map<string, number>;
  readonly limits: Limits;
}

async function list(root: string, under: string, depth: number, listing: Listing): Promise<void> {
  const entries = await readdir(join(root, under), { withFileTypes: true }).catch(unreadable);
  for (const entry of entries) {
    const name = under === '' ? entry.name : `${under}/${entry.name}`;
    checkName(name);
    if (entry.isDirectory()) {
      if (depth < DEPTH && !entry.name.startsWith('.')) await list(root, name, depth + 1, listing);
    } else await addFile(root, name, listing);
  }
}

function unreadable(error: NodeJS.ErrnoException): never {
  if (error.code !== 'EACCES' && error.code !== 'EPERM') throw error;
  throw new SessionError('not-found', 'the folder may not be read: check its permissions');
}

async function addFile(root: string, name: string, { sizes, limits }: Listing): Promise<void> {
  const real = await realpath(join(root, name)).catch(() => null);
  const info = real === null ? null : await stat(real);
  if (real === null || info === null || !info.isFile()) return;
  if (!real.startsWith(root + sep))
    throw new SessionError('unsafe-path', 'a link that leads out of the session', { file: name });
  if (info.size > limits.fileBytes && name.endsWith('.tsv'))
    throw new SessionError('too-large', `over ${mebibytes(limits.fileBytes)}`, { file: name });
  if (sizes.size >= limits.entries)
    throw new SessionError('not-a-session', 'too many files for one session: give its own folder');
  sizes.set(name, info.size);
}

const mebibytes = (bytes: number): string => `${Math.round(bytes / 2 ** 20)} MiB`;

async function* fileChunks(path: string): AsyncGenerator<Uint8Array> {
  const file = await open(path, 'r');
  try {
    const buffer = Buffer.allocUnsafe(CHUNK_BYTES);
    for (;;) {
      const { bytesRead } = await file.read(buffer, 0, CHUNK_BYTES, null);
      if (bytesRead === 0) return;
      yield buffer.subarray(0, bytesRead);
    }
  } finally {
    await file.close();
  }
}
