import { open, stat } from 'node:fs/promises';
import { PassThrough, Readable } from 'node:stream';
import { ZipFile } from 'yazl';

/** One file of the zip: what is on the disk, or its content. */
export interface ExportEntry {
  readonly name: string;
  readonly path?: string;
  readonly text?: string;
}

/** What the zip holds and what it should hold. */
export interface Manifest {
  readonly files: readonly { readonly name: string; readonly bytes: number }[];
  readonly missing: readonly { readonly name: string; readonly why: string }[];
}

const GONE = 'The hub does not have this file any more.';

interface Found {
  readonly there: readonly (ExportEntry & { readonly bytes: number })[];
  readonly missing: readonly ExportEntry[];
}

async function look(entries: readonly ExportEntry[]): Promise<Found> {
  const sizes = await Promise.all(
    entries.map(async ({ path, text }) =>
      path === undefined
        ? Buffer.byteLength(text ?? '')
        : ((await stat(path).catch(() => null))?.size ?? null),
    ),
  );
  const there = entries.flatMap((entry, i) => {
    const bytes = sizes[i] ?? null;
    return bytes === null ? [] : [{ ...entry, bytes }];
  });
  return { there, missing: entries.filter((_, i) => sizes[i] === null) };
}

/** Nothing where it was deleted between the look and its turn. */
async function contentOf(path: string): Promise<Readable> {
  const there = await open(path, 'r').catch(() => null);
  return there?.createReadStream() ?? Readable.from([]);
}

/**
 * A zip as it is read, so that neither memory nor disk holds it whole. What is not there is left out and named in
 * `manifest.json` within it. Recordings and films are packed already and go as they are.
 */
export async function zipStream(entries: readonly ExportEntry[]): Promise<Readable> {
  const { there, missing } = await look(entries);
  const manifest: Manifest = {
    files: there.map(({ name, bytes }) => ({ name, bytes })),
    missing: missing.map(({ name }) => ({ name, why: GONE })),
  };
  const zip = new ZipFile();
  const out = new PassThrough();
  let reading: Readable | null = null;
  zip.on('error', (error: Error) => out.destroy(error));
  // Whoever takes it may go away in the middle.
  out.on('close', () => reading?.destroy());
  zip.addBuffer(Buffer.from(JSON.stringify(manifest, null, 2)), 'manifest.json');
  for (const { name, path, text } of there)
    if (path === undefined) zip.addBuffer(Buffer.from(text ?? ''), name);
    else
      zip.addReadStreamLazy(name, { compress: false }, (give) => {
        if (out.destroyed) return;
        void contentOf(path).then((content) => give(null, (reading = content)));
      });
  zip.end();
  zip.outputStream.pipe(out);
  return out;
}
