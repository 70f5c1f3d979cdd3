import { type RawBuilder, sql } from 'kysely';
import type { Db } from '../db/open.ts';

/** Of a session by the table's name in the statement: that it counts, as `countsAsPractice` has it. */
export const countsIn = (session: string): RawBuilder<boolean> =>
  sql<boolean>`(${sql.ref(`${session}.simulated`)} = 0 or exists (select 1 from club where demo = 1))`;

export async function isDemonstration(db: Db): Promise<boolean> {
  const club = await db.selectFrom('club').select('demo').executeTakeFirst();
  return club?.demo === 1;
}
