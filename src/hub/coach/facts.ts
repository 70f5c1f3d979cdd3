import { type RawBuilder, sql } from 'kysely';
import {
  type AttentionFacts,
  MIX_DAYS,
  type RankedNeed,
  attention,
} from '../../coaching/attention.ts';
import { DRIFT_SESSIONS, type DriftFacts } from '../../coaching/drift.ts';
import { DEFAULT_PLAN, type Plan } from '../../coaching/plan.ts';
import type { MeasureSpreads } from '../../sessions/store/spreads.ts';
import type { HubContext } from '../context.ts';
import type { Db } from '../db/open.ts';

const DAY_MS = 86_400_000;

/** What the database tells of one student at a glance. */
export interface StudentFacts {
  readonly id: string;
  readonly name: string;
  readonly hand: 'left' | 'right';
  readonly joinedMs: number;
  readonly sessions: number;
  readonly unreviewed: number;
  readonly lastPracticeMs: number | null;
  readonly weekRehearsals: number;
  readonly weekBalls: number;
  readonly nextSessionId: string | null;
  readonly needs: readonly RankedNeed[];
}

type Whose = { readonly coachId: string } | { readonly studentId: string };

interface Row extends Omit<StudentFacts, 'needs'> {
  readonly plan: string | null;
  /** -1 where none was given. */
  readonly pain: number | null;
  readonly painRise: number | null;
  readonly painWarnings: number;
  readonly otherWarnings: number;
  readonly unanswered: number;
  readonly mixBalls: number;
  readonly ballsInMix: number;
  readonly fortnight: number;
}

/** Of a coach's students or of one: three statements, whatever their number. */
export async function studentFacts({ db, now }: HubContext, whose: Whose): Promise<StudentFacts[]> {
  const nowMs = now();
  const rows = await counted(db, whose, nowMs);
  const recent = await recentSpreads(db, whose);
  const plans = new Map<string, Plan>();
  const planOf = (text: string | null): Plan => {
    if (text === null) return DEFAULT_PLAN;
    const plan = plans.get(text) ?? (JSON.parse(text) as Plan);
    plans.set(text, plan);
    return plan;
  };
  return rows.map((row) => {
    const { plan, painWarnings, otherWarnings, unanswered, fortnight, ...rest } = row;
    const { mixBalls: balls, ballsInMix, pain, painRise, ...seen } = rest;
    const facts: AttentionFacts = {
      nowMs,
      joinedMs: seen.joinedMs,
      plan: planOf(plan),
      pain: pain === null || pain < 0 ? null : pain,
      painRise,
      painWarnings,
      otherWarnings,
      unreviewed: seen.unreviewed,
      unanswered,
      lastPracticeMs: seen.lastPracticeMs,
      balls,
      ballsInMix,
      week: seen.weekRehearsals + seen.weekBalls,
      fortnight,
      recent: recent.get(seen.id) ?? [],
    };
    return { ...seen, needs: attention(facts) };
  });
}

const those = (whose: Whose): RawBuilder<unknown> =>
  'coachId' in whose
    ? sql`p.coachId = ${whose.coachId} and p.role = 'student'`
    : sql`p.id = ${whose.studentId}`;

const PAIN_WARNINGS = sql`('pain-now', 'pain-high', 'pain-next-day', 'red-flag')`;

async function counted(db: Db, whose: Whose, nowMs: number): Promise<readonly Row[]> {
  const [week, fortnight, mix] = [7, 14, MIX_DAYS].map((days) => nowMs - days * DAY_MS);
  const { rows } = await sql<Row>`
    with own as (select p.* from person p where ${those(whose)}),
    practice as (
      select s.studentId,
        count(*) as sessions,
        sum(s.reviewedMs is null) as unreviewed,
        max(s.startedMs) as lastPracticeMs,
        max(case when s.reviewedMs is null then max(ifnull(s.painBefore, -1), ifnull(s.painAfter, -1)) end) as pain,
        max(case when s.reviewedMs is null then s.painAfter - s.painBefore end) as painRise,
        sum(iif(s.startedMs > ${week}, s.rehearsals, 0)) as weekRehearsals,
        sum(iif(s.startedMs > ${week}, s.balls, 0)) as weekBalls,
        sum(iif(s.startedMs > ${fortnight}, s.rehearsals + s.balls, 0)) as fortnight,
        sum(iif(s.startedMs > ${mix}, s.balls, 0)) as mixBalls,
        sum(iif(s.startedMs > ${mix}, s.ballsInMix, 0)) as ballsInMix
      from own p join session s on s.studentId = p.id group by s.studentId),
    alarm as (
      select s.studentId,
        sum(w.warningId in ${PAIN_WARNINGS}) as painWarnings,
        sum(w.warningId not in ${PAIN_WARNINGS}) as otherWarnings
      from own p join session s on s.studentId = p.id and s.reviewedMs is null and s.warnings > 0
        join warning w on w.sessionId = s.id
      group by s.studentId),
    spoken as (
      select c.authorId as studentId, count(distinct c.sessionId) as unanswered
      from own p join comment c on c.authorId = p.id
      where not exists (select 1 from comment d
        where d.sessionId = c.sessionId and d.authorId <> c.authorId and d.atMs >= c.atMs)
      group by c.authorId)
    select p.id, p.name, p.hand, p.createdMs as joinedMs,
      ifnull(a.sessions, 0) as sessions, ifnull(a.unreviewed, 0) as unreviewed, a.lastPracticeMs, a.pain, a.painRise,
      ifnull(a.weekRehearsals, 0) as weekRehearsals, ifnull(a.weekBalls, 0) as weekBalls,
      ifnull(a.fortnight, 0) as fortnight, ifnull(a.mixBalls, 0) as mixBalls, ifnull(a.ballsInMix, 0) as ballsInMix,
      ifnull(w.painWarnings, 0) as painWarnings, ifnull(w.otherWarnings, 0) as otherWarnings,
      ifnull(c.unanswered, 0) as unanswered,
      (select id from session where studentId = p.id and reviewedMs is null
        order by startedMs desc limit 1) as nextSessionId,
      (select plan from plan where studentId = p.id and validFromMs <= ${nowMs}
        order by number desc limit 1) as plan
    from own p left join practice a on a.studentId = p.id left join alarm w on w.studentId = p.id
      left join spoken c on c.studentId = p.id`.execute(db);
  return rows;
}

/** The newest sessions of each student, newest first: as many as drift is looked for in. */
async function recentSpreads(
  db: Db,
  whose: Whose,
): Promise<ReadonlyMap<string, readonly DriftFacts[]>> {
  const { rows } = await sql<{ studentId: string; spreads: string }>`
    select s.studentId, s.spreads from person p join session s on s.id in (
      select id from session where studentId = p.id and analysed = 1
      order by startedMs desc limit ${DRIFT_SESSIONS})
    where ${those(whose)} order by s.studentId, s.startedMs desc`.execute(db);
  const byStudent = new Map<string, DriftFacts[]>();
  for (const { studentId, spreads } of rows) {
    const list = byStudent.get(studentId) ?? [];
    byStudent.set(studentId, list);
    list.push(JSON.parse(spreads) as MeasureSpreads);
  }
  return byStudent;
}
