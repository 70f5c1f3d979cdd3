import { sql } from 'kysely';
import { type UncountedSession, whyNotCounted } from '../../coaching/notCounted.ts';
import type { Db } from '../db/open.ts';
import { countsIn } from './counting.ts';
import { type Whose, those } from './whose.ts';

interface Row {
  readonly studentId: string;
  readonly startedMs: number;
  readonly counts: number;
  readonly analysed: number;
  readonly problem: string | null;
}

/** Sessions that are in no count, by student, oldest first: their numbers are not there, or nobody practised. */
export async function uncountedSessions(
  db: Db,
  whose: Whose,
): Promise<ReadonlyMap<string, readonly UncountedSession[]>> {
  const { rows } = await sql<Row>`
    select s.studentId, s.startedMs, s.analysed, s.problem, ${countsIn('s')} as counts
    from person p join session s on s.studentId = p.id
    where ${those(whose)} and (s.analysed = 0 or not ${countsIn('s')})
    order by s.startedMs`.execute(db);
  const byStudent = new Map<string, UncountedSession[]>();
  for (const { studentId, startedMs, counts, analysed, problem } of rows) {
    const notCounted = whyNotCounted({
      simulated: counts === 0,
      recording: false,
      analysed: analysed === 1,
      problem,
    });
    if (notCounted === null) continue;
    const own = byStudent.get(studentId) ?? [];
    own.push({ startedMs, notCounted });
    byStudent.set(studentId, own);
  }
  return byStudent;
}
