import { sql } from 'kysely';
import { MIX_DAYS, type RankedNeed, attention, needsCoach } from '../../coaching/attention.ts';
import { type OpenPain, openPain, openWarnings } from '../../coaching/concerns.ts';
import { DRIFT_SESSIONS, type DriftFacts } from '../../coaching/drift.ts';
import {
  type NotCountedCounts,
  type UncountedSession,
  practiceCounts,
  uncounted,
  unknownSessions,
  weekCounts,
} from '../../coaching/notCounted.ts';
import { countsIn } from './counting.ts';
import { DEFAULT_PLAN, type Plan } from '../../coaching/plan.ts';
import type { MeasureSpreads } from '../../sessions/store/spreads.ts';
import type { HubContext } from '../context.ts';
import type { Db } from '../db/open.ts';
import { openQuestions } from './questions.ts';
import { PAINFUL, type SignsOfStudent, signsOf } from './signs.ts';
import { uncountedSessions } from './uncounted.ts';
import { type Whose, those } from './whose.ts';

const DAY_MS = 86_400_000;
const FORTNIGHT_DAYS = 14;

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
  readonly weekNotCounted: NotCountedCounts;
  readonly simulatedSessions: number;
  readonly nextSessionId: string | null;
  readonly needs: readonly RankedNeed[];
  readonly openPain: OpenPain | null;
  /** Sessions to review that need no look; 0 where something of the student is open. */
  readonly calm: number;
}

interface Row extends Omit<
  StudentFacts,
  'needs' | 'openPain' | 'weekNotCounted' | 'simulatedSessions'
> {
  readonly plan: string | null;
  readonly planNumber: number | null;
  readonly painFreeMs: number | null;
  readonly quietMs: number | null;
  readonly mixBalls: number;
  readonly ballsInMix: number;
  readonly fortnight: number;
}

/** Of a coach's students or of one: so many statements, whatever their number. */
export async function studentFacts({ db, now }: HubContext, whose: Whose): Promise<StudentFacts[]> {
  const nowMs = now();
  const rows = await counted(db, whose, nowMs);
  const [recent, signs, questions, others] = [
    await recentSpreads(db, whose),
    await signsOf(db, whose),
    await openQuestions(db, whose, nowMs),
    await uncountedSessions(db, whose),
  ];
  const planOf = planReader();
  return rows.map((row) => {
    const { plan, planNumber, painFreeMs, quietMs, fortnight, mixBalls, ballsInMix, ...seen } = row;
    const quiet = { painFreeMs, reviewedMs: quietMs };
    const own: SignsOfStudent = signs.get(seen.id) ?? { sessions: [], closed: [] };
    const sessions = own.sessions.map((s) => ({ ...s, underPlan: s.planNumber === planNumber }));
    const not = notCountedOf(others.get(seen.id) ?? [], nowMs);
    const pain = openPain(sessions, quiet, own.closed);
    const needs = attention({
      nowMs,
      joinedMs: seen.joinedMs,
      plan: planOf(plan),
      pain,
      warnings: openWarnings(sessions, quiet),
      unreviewed: seen.unreviewed,
      questions: questions.get(seen.id) ?? [],
      lastPracticeMs: seen.lastPracticeMs,
      balls: mixBalls,
      ballsInMix,
      week: seen.weekRehearsals + seen.weekBalls,
      fortnight,
      unknown: not.fortnight,
      simulated: not.simulated,
      recent: recent.get(seen.id) ?? [],
    });
    return {
      ...seen,
      weekNotCounted: not.week,
      simulatedSessions: not.simulated,
      needs,
      openPain: pain,
      calm: needsCoach(needs) ? 0 : seen.calm,
    };
  });
}

/** What is not in the numbers of the week and the fortnight. */
function notCountedOf(sessions: readonly UncountedSession[], nowMs: number) {
  const others = uncounted(sessions);
  return {
    week: weekCounts(others, nowMs).notCounted,
    fortnight: unknownSessions(practiceCounts(others, nowMs - FORTNIGHT_DAYS * DAY_MS).notCounted),
    simulated: practiceCounts(others).notCounted.simulated,
  };
}

/** Most students have one of few plans: each is read once. */
function planReader(): (text: string | null) => Plan {
  const plans = new Map<string, Plan>();
  return (text) => {
    if (text === null) return DEFAULT_PLAN;
    const plan = plans.get(text) ?? (JSON.parse(text) as Plan);
    plans.set(text, plan);
    return plan;
  };
}

/** Calm, whatever else there is of the student. */
export const CALM = sql`s.reviewedMs is null and s.analysed = 1 and s.warnings = 0 and not ${PAINFUL}`;

async function counted(db: Db, whose: Whose, nowMs: number): Promise<readonly Row[]> {
  const [week, fortnight, mix] = [7, FORTNIGHT_DAYS, MIX_DAYS].map((days) => nowMs - days * DAY_MS);
  const { rows } = await sql<Row>`
    with own as (
      select p.*, (select number from plan where studentId = p.id and validFromMs <= ${nowMs}
        order by number desc limit 1) as planNumber
      from person p where ${those(whose)}),
    practice as (
      select s.studentId,
        count(*) as sessions,
        sum(s.reviewedMs is null) as unreviewed,
        sum(${CALM}) as calm,
        max(s.startedMs) as lastPracticeMs,
        max(case when s.analysed = 1 and s.warnings = 0 and ifnull(s.painBefore, s.painAfter) is not null
          and not ${PAINFUL} then s.startedMs end) as painFreeMs,
        max(case when s.analysed = 1 and s.warnings = 0 and s.reviewedMs is not null
          and s.planNumber is p.planNumber then s.startedMs end) as quietMs,
        sum(iif(s.startedMs > ${week}, s.rehearsals, 0)) as weekRehearsals,
        sum(iif(s.startedMs > ${week}, s.balls, 0)) as weekBalls,
        sum(iif(s.startedMs > ${fortnight}, s.rehearsals + s.balls, 0)) as fortnight,
        sum(iif(s.startedMs > ${mix}, s.balls, 0)) as mixBalls,
        sum(iif(s.startedMs > ${mix}, s.ballsInMix, 0)) as ballsInMix
      from own p join session s on s.studentId = p.id and ${countsIn('s')} group by s.studentId)
    select p.id, p.name, p.hand, p.createdMs as joinedMs, p.planNumber,
      ifnull(a.sessions, 0) as sessions, ifnull(a.unreviewed, 0) as unreviewed, ifnull(a.calm, 0) as calm,
      a.lastPracticeMs, a.painFreeMs, a.quietMs,
      ifnull(a.weekRehearsals, 0) as weekRehearsals, ifnull(a.weekBalls, 0) as weekBalls,
      ifnull(a.fortnight, 0) as fortnight, ifnull(a.mixBalls, 0) as mixBalls, ifnull(a.ballsInMix, 0) as ballsInMix,
      (select s.id from session s where s.studentId = p.id and s.reviewedMs is null and ${countsIn('s')}
        order by startedMs desc limit 1) as nextSessionId,
      (select plan from plan where studentId = p.id and number = p.planNumber) as plan
    from own p left join practice a on a.studentId = p.id`.execute(db);
  return rows;
}

/** The newest sessions of each student, newest first: as many as drift is looked for in. */
async function recentSpreads(
  db: Db,
  whose: Whose,
): Promise<ReadonlyMap<string, readonly DriftFacts[]>> {
  const { rows } = await sql<{ studentId: string; spreads: string }>`
    select s.studentId, s.spreads from person p join session s on s.id in (
      select x.id from session x where x.studentId = p.id and x.analysed = 1 and ${countsIn('x')}
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
