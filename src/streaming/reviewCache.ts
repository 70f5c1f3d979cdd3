import { mkdir, readFile, readdir, rename, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { VERSION } from '../sessions/version.ts';
import type { RepetitionCurves, SessionOverview } from './sessionsContract.ts';

/**
 * What was computed for the pages of sessions, on disk: one folder a session, one file an answer.
 * It may be deleted at any time and is computed again; a file that is damaged or of another version counts as none.
 */
export interface ReviewCache {
  /** Folder in which it lies. */
  readonly root: string;
  overview(id: string, stamp: string): Promise<SessionOverview | null>;
  curves(id: string, stamp: string, index: number): Promise<RepetitionCurves | null>;
  /** @throws where the disk refuses */
  keep(id: string, stamp: string, kept: KeptReview): Promise<void>;
  forget(id: string): Promise<void>;
}

export interface KeptReview {
  readonly overview: SessionOverview;
  readonly curves: readonly RepetitionCurves[];
}

/** Raised whenever the files' layout or the way of computing them changes. */
const LAYOUT = 1;
/** Sessions kept, newest first: about 6 MB for 200 repetitions. */
const KEPT = 40;
const RESULT = 'derivatives/stillcatch/analysis.json';

/** Names the result that curves belong to; `null` where there is none on disk. */
export async function stampOf(sessionFolder: string): Promise<string | null> {
  const found = await stat(join(sessionFolder, RESULT)).catch(() => null);
  return found && `${VERSION} ${LAYOUT} ${found.size} ${Math.round(found.mtimeMs)}`;
}

export function reviewCache(root: string): ReviewCache {
  const read = async <T>(id: string, stamp: string, name: string): Promise<T | null> => {
    const folder = join(root, id);
    try {
      if ((await readFile(join(folder, 'stamp.txt'), 'utf8')) !== stamp) return null;
      return JSON.parse(await readFile(join(folder, name), 'utf8')) as T;
    } catch {
      return null;
    }
  };
  return {
    root,
    overview: (id, stamp) => read(id, stamp, 'overview.json'),
    curves: (id, stamp, index) => read(id, stamp, `curves-${index}.json`),
    async keep(id, stamp, kept) {
      await write(root, id, stamp, kept);
      await trim(root);
    },
    forget: (id) => rm(join(root, id), { recursive: true, force: true }),
  };
}

/** Whole or not at all: a reader never sees half of it. */
async function write(root: string, id: string, stamp: string, kept: KeptReview): Promise<void> {
  const [folder, part] = [join(root, id), join(root, `${id}.part`)];
  await rm(part, { recursive: true, force: true });
  await mkdir(part, { recursive: true });
  await writeFile(join(part, 'overview.json'), JSON.stringify(kept.overview));
  for (const curves of kept.curves)
    await writeFile(join(part, `curves-${curves.index}.json`), JSON.stringify(curves));
  await writeFile(join(part, 'stamp.txt'), stamp);
  await rm(folder, { recursive: true, force: true });
  await rename(part, folder);
}

async function trim(root: string): Promise<void> {
  const names = await readdir(root);
  if (names.length <= KEPT) return;
  const aged = await Promise.all(
    names.map(async (name) => ({ name, ms: (await stat(join(root, name))).mtimeMs })),
  );
  aged.sort((a, b) => b.ms - a.ms);
  for (const { name } of aged.slice(KEPT))
    await rm(join(root, name), { recursive: true, force: true });
}
