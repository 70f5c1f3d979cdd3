import { forgetDevices } from '../access/devices.ts';
import type { Db } from '../db/open.ts';

/** Invitations that stand open for somebody who is here, as when the coach who made them is the coach no more. */
export async function endInvitations(db: Db, personId: string): Promise<void> {
  await db
    .deleteFrom('invite')
    .where('personId', '=', personId)
    .where('usedMs', 'is', null)
    .execute();
}

/** A code that would let a computer in is good no more. */
export async function endPairing(db: Db, studentId: string): Promise<void> {
  await db.deleteFrom('pairing').where('studentId', '=', studentId).execute();
}

/** Whatever lets anybody in as this person: sign-ins, computers, codes and invitations. */
export async function endAllWaysIn(db: Db, personId: string, nowMs: number): Promise<void> {
  await db.deleteFrom('signin').where('personId', '=', personId).execute();
  await db
    .updateTable('machine')
    .set({ revokedMs: nowMs })
    .where('studentId', '=', personId)
    .where('revokedMs', 'is', null)
    .execute();
  await forgetDevices(db, personId);
  await endPairing(db, personId);
  await endInvitations(db, personId);
}
