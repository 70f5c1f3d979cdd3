import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { openDatabase } from '../../sessions/store/driver.ts';
import { lock } from '../../sessions/store/lock.ts';
import { makeForOwnUser, ownOnly } from '../../sessions/write/ownOnly.ts';
import { diskWords } from '../../sessions/write/disk.ts';
import { migrateHub } from './migrations.ts';
import type { Db, HubTables } from './tables.ts';

export type { Db } from './tables.ts';

/** Where things lie in the hub's data folder. */
export interface HubPlaces {
  readonly root: string;
  readonly database: string;
  /** `<studentId>/<sessionId>.zip` as it came, and beside it what was computed of it. */
  readonly students: string;
  /** Uploads that are under way. */
  readonly uploads: string;
  readonly clips: string;
}

export interface HubData {
  readonly db: Db;
  readonly places: HubPlaces;
  close(): Promise<void>;
}

/** Opens the hub's data folder for this process. @throws Error in words where it cannot be had. */
export async function openHubData(root: string): Promise<HubData> {
  makeForOwnUser();
  const places = {
    root,
    database: join(root, 'hub.db'),
    students: join(root, 'students'),
    uploads: join(root, 'uploads'),
    clips: join(root, 'clips'),
  };
  for (const folder of [places.students, places.uploads, places.clips])
    await mkdir(folder, { recursive: true, mode: 0o700 }).catch((error: unknown) => {
      throw new Error(`The data folder ${root} cannot be made: ${diskWords(error)}.`);
    });
  for (const folder of [root, places.students, places.uploads, places.clips]) await ownOnly(folder);
  const unlock = await lock(join(root, 'in-use'));
  let db: Db | undefined;
  try {
    db = openDatabase<HubTables>(places.database);
    await migrateHub(db);
    await ownOnly(root, [places.database]);
  } catch (error) {
    await db?.destroy();
    await unlock();
    throw error;
  }
  const opened = db;
  return {
    db: opened,
    places,
    async close() {
      await opened.destroy();
      await unlock();
    },
  };
}
