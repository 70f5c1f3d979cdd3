import { readdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { HubContext } from '../context.ts';
import { removeSessionFiles, sessionPaths } from '../sessionPaths.ts';
import { stagingPath } from './uploads.ts';

/** An upload that was not finished in so long is given up: senders try for days. A choice, ms. */
const GIVEN_UP_MS = 30 * 86_400_000;

/** Removes what nobody will finish, and files that a crash left without their row. At the start, before anything comes. */
export async function tidyUploads(context: HubContext): Promise<void> {
  const { db, now } = context;
  await db
    .deleteFrom('upload')
    .where('sessionId', 'is', null)
    .where('createdMs', '<', now() - GIVEN_UP_MS)
    .execute();
  await tidyStaging(context);
  await tidyStudents(context);
}

async function tidyStaging(context: HubContext): Promise<void> {
  const open = await context.db
    .selectFrom('upload')
    .select(['studentId', 'clientId'])
    .where('sessionId', 'is', null)
    .execute();
  const wanted = new Set(open.map((name) => stagingPath(context, name)));
  for (const name of await readdir(context.places.uploads)) {
    const path = join(context.places.uploads, name);
    if (!wanted.has(path)) await rm(path, { recursive: true, force: true });
  }
}

async function tidyStudents({ db, places }: HubContext): Promise<void> {
  for (const studentId of await readdir(places.students)) {
    const rows = await db
      .selectFrom('session')
      .select('id')
      .where('studentId', '=', studentId)
      .execute();
    const kept = new Set(rows.map(({ id }) => id));
    const names = await readdir(join(places.students, studentId)).catch(() => []);
    for (const name of names.filter((n) => n.endsWith('.zip') && !kept.has(n.slice(0, -4))))
      await removeSessionFiles(sessionPaths(places, studentId, name.slice(0, -4)));
  }
}
