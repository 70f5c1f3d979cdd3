import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { SessionError } from '../sessionError.ts';
import { makeForOwnUser, ownOnly } from '../write/ownOnly.ts';
import { diskWords, makeFolder } from '../write/disk.ts';

/** Where things lie in the data folder. A copy of that folder is a backup. */
export interface Places {
  readonly root: string;
  readonly index: string;
  /** Says which process has the folder. */
  readonly lock: string;
  /** One folder a session, in the recording format. */
  readonly sessions: string;
  /** Sessions that were deleted and can still be brought back. */
  readonly deleted: string;
}

export async function makePlaces(root: string): Promise<Places> {
  const places = {
    root,
    index: join(root, 'index.db'),
    lock: join(root, 'in-use'),
    sessions: join(root, 'sessions'),
    deleted: join(root, 'deleted'),
  };
  makeForOwnUser();
  try {
    await makeFolder(places.sessions);
    await makeFolder(places.deleted);
  } catch (error) {
    const why = diskWords(error);
    throw new SessionError('write-failed', `the data folder ${root} cannot be made: ${why}`);
  }
  for (const folder of [root, places.sessions, places.deleted]) await ownOnly(folder);
  await ownOnly(root, [places.index]);
  return places;
}

const ID = /^[A-Za-z0-9]{1,64}$/;

/** Sessions that lie in a folder; what is half made or something else is left out. */
export async function idsIn(folder: string): Promise<readonly string[]> {
  const entries = await readdir(folder, { withFileTypes: true });
  return entries.filter((e) => e.isDirectory() && ID.test(e.name)).map((e) => e.name);
}

/** @throws SessionError where `id` cannot be a session's: it becomes part of a path. */
export function checkedId(id: string): string {
  if (ID.test(id)) return id;
  throw new SessionError('not-found', 'session not found');
}

/** Sorts by time, and no two are alike: letters and digits of the time and of chance. */
export function newId(startedAt: Date, chance: number): string {
  const time = startedAt.toISOString().replaceAll(/[-:Z]|\.\d+/g, '');
  return `${time}x${Math.floor(chance * 36 ** 6)
    .toString(36)
    .padStart(6, '0')}`;
}
