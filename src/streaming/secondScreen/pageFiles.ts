import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

interface Chunk {
  readonly file: string;
  readonly css?: readonly string[];
  readonly assets?: readonly string[];
  readonly imports?: readonly string[];
  readonly dynamicImports?: readonly string[];
}

type Manifest = Readonly<Record<string, Chunk>>;

export const WATCH_PAGE = 'watch.html';

function chunksOf(manifest: Manifest, name: string, found = new Set<string>()): Set<string> {
  if (found.has(name)) return found;
  found.add(name);
  const { imports = [], dynamicImports = [] } = manifest[name] ?? {};
  for (const next of [...imports, ...dynamicImports]) chunksOf(manifest, next, found);
  return found;
}

/** What the page of a second screen is made of, and nothing of the other pages; `null` where it has not been built. */
export function pageFiles(folder: string): readonly string[] | null {
  const path = join(folder, '.vite', 'manifest.json');
  if (!existsSync(path)) return null;
  const manifest = JSON.parse(readFileSync(path, 'utf8')) as Manifest;
  if (!(WATCH_PAGE in manifest)) return null;
  const files = [...chunksOf(manifest, WATCH_PAGE)]
    .map((name) => manifest[name])
    .flatMap((chunk) => [chunk?.file ?? [], chunk?.css ?? [], chunk?.assets ?? []].flat());
  return [...new Set(files)];
}
