import { planChanges } from '../../coaching/planChanges.ts';
import type { Plan } from '../../coaching/plan.ts';
import type { Inbox, InboxThread } from '../../streaming/hubContract/machine.ts';
import type { Comment } from '../../streaming/hubContract/review.ts';
import type { PlanVersion } from '../../streaming/hubContract/students.ts';
import type { HubContext } from '../context.ts';
import { clubOf } from '../people/accounts.ts';
import { namesOf } from '../people/pairing.ts';

/** Sessions whose threads a machine gets, newest first; a choice. */
const MOST_THREADS = 100;

/** All that a student's machine should know now. */
export async function inboxOf(context: HubContext, studentId: string): Promise<Inbox> {
  const { student, coach } = await namesOf(context, studentId);
  return {
    student,
    coach,
    club: (await clubOf(context.db)).name,
    ...(await plansOf(context, studentId)),
    threads: await threadsOf(context, studentId),
  };
}

async function plansOf(
  { db, now }: HubContext,
  studentId: string,
): Promise<Pick<Inbox, 'plan' | 'nextPlan'>> {
  const rows = await db
    .selectFrom('plan')
    .leftJoin('person', 'person.id', 'plan.byId')
    .select(['plan.id', 'number', 'plan', 'validFromMs', 'plan.createdMs', 'person.name as by'])
    .where('studentId', '=', studentId)
    .orderBy('number')
    .execute();
  const versions = rows.map(({ plan: text, by, ...row }, i): PlanVersion => {
    const plan = JSON.parse(text) as Plan;
    const before = rows[i - 1];
    const changes = before === undefined ? [] : planChanges(JSON.parse(before.plan) as Plan, plan);
    return { ...row, plan, by: by ?? '', changes };
  });
  const valid = versions.filter((v) => v.validFromMs <= now());
  const later = versions.filter((v) => v.validFromMs > now());
  const plan = valid.at(-1) ?? null;
  const next = later.filter((v) => v.number > (plan?.number ?? 0));
  next.sort((a, b) => a.validFromMs - b.validFromMs);
  return { plan, nextPlan: next[0] ?? null };
}

async function threadsOf({ db }: HubContext, studentId: string): Promise<readonly InboxThread[]> {
  const sessions = await db
    .selectFrom('session')
    .select(['id', 'clientId', 'startedMs', 'reviewedMs'])
    .where('studentId', '=', studentId)
    .where((eb) =>
      eb.or([
        eb('reviewedMs', 'is not', null),
        eb.exists(
          eb
            .selectFrom('comment')
            .select('comment.id')
            .whereRef('comment.sessionId', '=', 'session.id'),
        ),
      ]),
    )
    .orderBy('startedMs', 'desc')
    .limit(MOST_THREADS)
    .execute();
  if (sessions.length === 0) return [];
  const comments = await commentsOf(
    db,
    studentId,
    sessions.map((s) => s.id),
  );
  return sessions.map(({ id, ...session }) => ({ ...session, comments: comments.get(id) ?? [] }));
}

async function commentsOf(
  db: HubContext['db'],
  studentId: string,
  sessionIds: readonly string[],
): Promise<ReadonlyMap<string, readonly Comment[]>> {
  const rows = await db
    .selectFrom('comment')
    .innerJoin('person', 'person.id', 'comment.authorId')
    .select([
      'comment.id',
      'sessionId',
      'authorId',
      'atMs',
      'text',
      'repIndex as index',
      'momentS',
      'replyTo',
      'person.name as by',
      'person.role',
    ])
    .where('sessionId', 'in', sessionIds)
    .orderBy('atMs')
    .execute();
  const bySession = new Map<string, Comment[]>();
  for (const { sessionId, authorId, role, ...comment } of rows) {
    const list = bySession.get(sessionId) ?? [];
    bySession.set(sessionId, list);
    const byRole = role === 'student' ? 'student' : 'coach';
    list.push({ ...comment, byRole, mine: authorId === studentId });
  }
  return bySession;
}
