import { Refused } from '../../streaming/apiErrors.ts';
import type { Db } from '../db/open.ts';

/**
 * A session's id by the name that it has here, or the one under which it was sent once more.
 * @throws Refused where it is not on the hub.
 */
export async function sessionOf(db: Db, studentId: string, clientId: string): Promise<string> {
  const session = await db
    .selectFrom('session')
    .select('id')
    .where('studentId', '=', studentId)
    .where('clientId', '=', clientId)
    .executeTakeFirst();
  if (session !== undefined) return session.id;
  const upload = await db
    .selectFrom('upload')
    .select('sessionId')
    .where('studentId', '=', studentId)
    .where('clientId', '=', clientId)
    .executeTakeFirst();
  if (typeof upload?.sessionId === 'string') return upload.sessionId;
  throw new Refused(404, 'not-sent', 'This session is not on the hub.');
}
