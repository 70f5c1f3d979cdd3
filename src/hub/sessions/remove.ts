import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { HubContext } from '../context.ts';
import { removeSessionFiles, sessionPaths } from '../sessionPaths.ts';

/** Deletes a session for good: its rows, its recording, what was computed of it, its films. */
export async function removeSession(
  { db, places }: HubContext,
  { id, studentId }: { readonly id: string; readonly studentId: string },
): Promise<void> {
  const clips = await db.selectFrom('clip').select('id').where('sessionId', '=', id).execute();
  await db.deleteFrom('session').where('id', '=', id).execute();
  await removeSessionFiles(sessionPaths(places, studentId, id));
  for (const clip of clips) await rm(join(places.clips, clip.id), { force: true });
}
