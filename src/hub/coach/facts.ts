import type { Plan } from '../../coaching/plan.ts';
import { DEFAULT_PLAN } from '../../coaching/plan.ts';
import type { SpreadsView } from '../../streaming/sessionsContract.ts';
import type { HubContext } from '../context.ts';
import type { Db } from '../db/open.ts';
import type { RecentSession, StudentFacts } from './needs.ts';

const RECENT_MS = 60 * 86_400_000;

export interface KnownStudent extends StudentFacts {
  readonly id: string;
  readonly name: string;
  readonly hand: 'left' | 'right';
  /** Newest session that nobody looked at. */
  readonly nextSessionId: string | null;
}

/** Ids of whom it is about. */
type Ids = readonly string[];

async function recentOf(db: Db, ids: Ids, sinceMs: number): Promise<Map<string, RecentSession[]>> {
  const rows = await db
    .selectFrom('session')
    .select([
      'studentId',
      'startedMs',
      'reviewedMs',
      'warnings',
      'painBefore',
      'painAfter',
      'rehearsals',
      'balls',
      'ballsInMix',
      'spreads',
    ])
    .where('studentId', 'in', ids)
    .where('startedMs', '>', sinceMs)
    .orderBy('startedMs', 'desc')
    .execute();
  const found = new Map<string, RecentSession[]>();
  for (const { studentId, reviewedMs, rehearsals, spreads, ...row } of rows) {
    const session: RecentSession = {
      ...row,
      reviewed: reviewedMs !== null,
      repetitions: rehearsals + row.balls,
      spreads: (JSON.parse(spreads) as { rehearsals: SpreadsView }).rehearsals,
    };
    const before = found.get(studentId);
    if (before === undefined) found.set(studentId, [session]);
    else before.push(session);
  }
  return found;
}

async function lastOf(db: Db, ids: Ids): Promise<Map<string, number>> {
  const rows = await db
    .selectFrom('session')
    .select('studentId')
    .select((e) => e.fn.max('startedMs').as('lastMs'))
    .where('studentId', 'in', ids)
    .groupBy('studentId')
    .execute();
  return new Map(rows.map(({ studentId, lastMs }) => [studentId, Number(lastMs)]));
}

interface Unreviewed {
  readonly n: number;
  readonly oldestMs: number;
  readonly newestId: string;
}

async function unreviewedOf(db: Db, ids: Ids): Promise<Map<string, Unreviewed>> {
  const rows = await db
    .selectFrom('session')
    .select(['studentId', 'id', 'startedMs'])
    .where('studentId', 'in', ids)
    .where('reviewedMs', 'is', null)
    .orderBy('startedMs', 'desc')
    .execute();
  const found = new Map<string, Unreviewed>();
  for (const { studentId, id, startedMs } of rows) {
    const before = found.get(studentId);
    found.set(studentId, {
      n: (before?.n ?? 0) + 1,
      oldestMs: startedMs,
      newestId: before?.newestId ?? id,
    });
  }
  return found;
}

/** Comments of students that no coach wrote after, in the same session. */
async function unansweredOf(db: Db, ids: Ids): Promise<Map<string, number>> {
  const rows = await db
    .selectFrom('comment')
    .innerJoin('session', 'session.id', 'comment.sessionId')
    .select('session.studentId')
    .select((e) => e.fn.min('comment.atMs').as('firstMs'))
    .where('session.studentId', 'in', ids)
    .whereRef('comment.authorId', '=', 'session.studentId')
    .where((e) =>
      e.not(
        e.exists(
          e
            .selectFrom('comment as answer')
            .select('answer.id')
            .whereRef('answer.sessionId', '=', 'comment.sessionId')
            .whereRef('answer.authorId', '!=', 'session.studentId')
            .whereRef('answer.atMs', '>=', 'comment.atMs'),
        ),
      ),
    )
    .groupBy('session.studentId')
    .execute();
  return new Map(rows.map(({ studentId, firstMs }) => [studentId, Number(firstMs)]));
}

async function plansOf(db: Db, ids: Ids, nowMs: number): Promise<Map<string, Plan>> {
  const rows = await db
    .selectFrom('plan')
    .select(['studentId', 'plan'])
    .where('studentId', 'in', ids)
    .where('validFromMs', '<=', nowMs)
    .orderBy('validFromMs')
    .orderBy('number')
    .execute();
  return new Map(rows.map(({ studentId, plan }) => [studentId, JSON.parse(plan) as Plan]));
}

/** Everything that the order of need goes by, of some students at once. */
export async function knownStudents({ db, now }: HubContext, ids: Ids): Promise<KnownStudent[]> {
  if (ids.length === 0) return [];
  const nowMs = now();
  const [people, recent, last, unreviewed, unanswered, plans] = await Promise.all([
    db
      .selectFrom('person')
      .select(['id', 'name', 'hand', 'createdMs'])
      .where('id', 'in', ids)
      .execute(),
    recentOf(db, ids, nowMs - RECENT_MS),
    lastOf(db, ids),
    unreviewedOf(db, ids),
    unansweredOf(db, ids),
    plansOf(db, ids, nowMs),
  ]);
  return people.map(({ id, name, hand, createdMs }) => ({
    id,
    name,
    hand,
    joinedMs: createdMs,
    lastPracticeMs: last.get(id) ?? null,
    unreviewed: unreviewed.get(id)?.n ?? 0,
    oldestUnreviewedMs: unreviewed.get(id)?.oldestMs ?? null,
    nextSessionId: unreviewed.get(id)?.newestId ?? null,
    unansweredMs: unanswered.get(id) ?? null,
    plan: plans.get(id) ?? DEFAULT_PLAN,
    recent: recent.get(id) ?? [],
  }));
}
