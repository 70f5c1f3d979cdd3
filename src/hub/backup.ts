import { chmod, copyFile, mkdir, readdir } from 'node:fs/promises';
import { existsSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { sql } from 'kysely';
import { openDatabase } from '../sessions/store/driver.ts';
import type { HubTables } from './db/tables.ts';

/** Uploads that are under way are left out: they come again. */
const FOLDERS = ['students', 'clips'];

const filesIn = async (folder: string): Promise<string[]> =>
  existsSync(folder)
    ? (await readdir(folder, { recursive: true, withFileTypes: true }))
        .filter((entry) => entry.isFile())
        .map((entry) => join(entry.parentPath, entry.name))
    : [];

async function copyDatabase(from: string, to: string): Promise<void> {
  const db = openDatabase<HubTables>(from);
  try {
    await sql`VACUUM INTO ${to}`.execute(db);
  } finally {
    await db.destroy();
  }
  await chmod(to, 0o600);
}

async function copyOver(from: string, to: string): Promise<boolean> {
  try {
    await mkdir(dirname(to), { recursive: true, mode: 0o700 });
    await copyFile(from, to);
    return true;
  } catch (error) {
    // deleted meanwhile, at somebody's wish
    if ((error as NodeJS.ErrnoException).code === 'ENOENT' && !existsSync(from)) return false;
    throw error;
  }
}

/**
 * Copies what a hub keeps into a new folder, which can take its place; the hub may run meanwhile. The database first:
 * every file that it tells of is there already.
 * @returns how many files beside the database
 * @throws Error in words
 */
export async function backUp(data: string, into: string): Promise<number> {
  const [from, to] = [resolve(data), resolve(into)];
  if (!existsSync(join(from, 'hub.db'))) throw new Error(`No hub found in ${data}.`);
  if (!relative(from, to).startsWith('..'))
    throw new Error('A backup must lie outside of the folder that it is of.');
  await mkdir(to, { recursive: true, mode: 0o700 });
  if ((await readdir(to)).length > 0)
    throw new Error(`${into} is not empty. Give a new folder for each backup.`);
  await copyDatabase(join(from, 'hub.db'), join(to, 'hub.db'));
  let copied = 0;
  for (const folder of FOLDERS)
    for (const file of await filesIn(join(from, folder)))
      if (await copyOver(file, join(to, relative(from, file)))) copied++;
  return copied;
}
