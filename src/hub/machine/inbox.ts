import type { Inbox, InboxThread } from '../../streaming/hubContract/machine.ts';
import type { Comment } from '../../streaming/hubContract/review.ts';
import { planVersions } from '../coach/planVersions.ts';
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
  const versions = await planVersions(db, studentId);
  const [newest] = versions.filter((v) => v.validFromMs <= now());
  // One that was made before the plan of now would not replace it.
  const later = versions.filter((v) => v.validFromMs > now() && v.number > (newest?.number ?? 0));
  later.sort((a, b) => a.validFromMs - b.validFromMs);
  return { plan: newest ?? null, nextPlan: later[0] ?? null };
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
      'onNote',
      'person.name as by',
      'person.role',
    ])
    .where('sessionId', 'in', sessionIds)
    .orderBy('atMs')
    .execute();
  const bySession = new Map<string, Comment[]>();
  for (const { sessionId, authorId, role, onNote, ...comment } of rows) {
    const list = bySession.get(sessionId) ?? [];
    bySession.set(sessionId, list);
    const byRole = role === 'student' ? 'student' : 'coach';
    list.push({ ...comment, onNote: onNote === 1, byRole, mine: authorId === studentId });
  }
  return bySession;
}
