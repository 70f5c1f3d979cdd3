import { sql } from 'kysely';
import {
  PAIN_FROM,
  PAIN_RISE,
  type PainClosed,
  type SessionSigns,
} from '../../coaching/concerns.ts';
import type { WarningId } from '../../coaching/judgement.ts';
import type { Db } from '../db/open.ts';
import { type Whose, those } from './whose.ts';
import { countsIn } from './counting.ts';

/** The rating alone shows pain, as a condition on `session s`. */
export const PAINFUL = sql`(max(ifnull(s.painBefore, -1), ifnull(s.painAfter, -1)) >= ${sql.lit(PAIN_FROM)}
  or ifnull(s.painAfter - s.painBefore, 0) >= ${sql.lit(PAIN_RISE)})`;

type Signs = Omit<SessionSigns, 'underPlan'> & { readonly planNumber: number | null };

export interface SignsOfStudent {
  /** Only sessions with a warning or with pain. */
  readonly sessions: readonly Signs[];
  readonly closed: readonly PainClosed[];
}

interface Row extends Omit<Signs, 'warnings' | 'reviewed'> {
  readonly studentId: string;
  readonly reviewed: number;
  readonly warnings: string | null;
}

/**
 * What sessions say of pain and warnings, by student, and what was closed of it. The first condition is that of the
 * index `sessionWithSigns`: whatever is painful fulfils it.
 */
export async function signsOf(db: Db, whose: Whose): Promise<ReadonlyMap<string, SignsOfStudent>> {
  const { rows } = await sql<Row>`
    select s.studentId, s.id as sessionId, s.startedMs, s.receivedMs, s.reviewedMs is not null as reviewed,
      s.planNumber, s.painBefore, s.painAfter, group_concat(distinct w.warningId) as warnings
    from person p join session s on s.studentId = p.id and ${countsIn('s')}
      left join warning w on w.sessionId = s.id
    where ${those(whose)} and (s.warnings > 0 or s.painBefore >= 4 or s.painAfter >= 2) and (s.warnings > 0 or ${PAINFUL})
    group by s.id`.execute(db);
  const closed = await sql<PainClosed & { readonly studentId: string }>`
    select c.studentId, c.throughMs, c.atMs from person p join painClosing c on c.studentId = p.id
    where ${those(whose)} and c.reopenedMs is null`.execute(db);
  const byStudent = new Map<string, { sessions: Signs[]; closed: PainClosed[] }>();
  const of = (studentId: string) => {
    const own = byStudent.get(studentId) ?? { sessions: [], closed: [] };
    byStudent.set(studentId, own);
    return own;
  };
  for (const { studentId, reviewed, warnings, ...row } of rows)
    of(studentId).sessions.push({
      ...row,
      reviewed: reviewed === 1,
      warnings: (warnings?.split(',') ?? []) as WarningId[],
    });
  for (const { studentId, ...one } of closed.rows) of(studentId).closed.push(one);
  return byStudent;
}
