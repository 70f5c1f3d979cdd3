import type { FastifyInstance } from 'fastify';
import Type from 'typebox';
import type {
  LastValues,
  StudentList,
  StudentRow,
  StudentView,
} from '../../streaming/hubContract/students.ts';
import type { SpreadsView } from '../../streaming/sessionsContract.ts';
import { person } from '../access/guard.ts';
import type { HubContext } from '../context.ts';
import { config, line, one, only, typed } from '../parts/api.ts';
import { namesOf } from '../people/pairing.ts';
import { type KnownStudent, knownStudents } from './facts.ts';
import { lessonsOf } from './lessons.ts';
import { ORDER, needsOf } from './needs.ts';
import { planNow, reachedMs } from './planVersions.ts';

const WEEK_MS = 7 * 86_400_000;

function rowOf(s: KnownStudent, nowMs: number): StudentRow {
  const week = s.recent.filter(({ startedMs }) => startedMs > nowMs - WEEK_MS);
  const weekBalls = week.reduce((n, { balls }) => n + balls, 0);
  return {
    id: s.id,
    name: s.name,
    hand: s.hand,
    needs: needsOf(s, nowMs),
    unreviewed: s.unreviewed,
    lastPracticeMs: s.lastPracticeMs,
    weekRehearsals: week.reduce((n, { repetitions }) => n + repetitions, 0) - weekBalls,
    weekBalls,
    nextSessionId: s.nextSessionId,
  };
}

const rank = ({ needs }: StudentRow): number => ORDER.indexOf(needs[0]?.code ?? 'none');

function listRoute(api: FastifyInstance, context: HubContext): void {
  const { db, now } = context;
  api.get(
    '/students',
    { config: config({ who: 'coach' }) },
    async (request): Promise<StudentList> => {
      const own = await db
        .selectFrom('person')
        .select('id')
        .where('coachId', '=', person(request).id)
        .where('role', '=', 'student')
        .execute();
      const known = await knownStudents(
        context,
        own.map(({ id }) => id),
      );
      const rows = known.map((s) => rowOf(s, now()));
      return {
        students: rows.sort((a, b) => rank(a) - rank(b) || a.name.localeCompare(b.name)),
      };
    },
  );
}

async function viewOf(context: HubContext, id: string): Promise<StudentView> {
  const { db, now } = context;
  const [known] = await knownStudents(context, [id]);
  if (known === undefined) throw new Error('the guard let a student through who is not there');
  const machines = await db
    .selectFrom('machine')
    .select('lastSeenMs')
    .where('studentId', '=', id)
    .where('revokedMs', 'is', null)
    .execute();
  const { n } = await db
    .selectFrom('session')
    .select((e) => e.fn.countAll<number>().as('n'))
    .where('studentId', '=', id)
    .executeTakeFirstOrThrow();
  const seen = machines.map(({ lastSeenMs }) => lastSeenMs ?? 0);
  const plan = await planNow(context, id);
  return {
    id,
    name: known.name,
    hand: known.hand,
    coach: (await namesOf(context, id)).coach,
    joinedMs: known.joinedMs,
    paired: machines.length > 0,
    lastContactMs: Math.max(0, ...seen) || null,
    needs: needsOf(known, now()),
    plan,
    planReachedMs: await reachedMs(db, plan.id),
    sessions: Number(n),
    unreviewed: known.unreviewed,
    lessons: await lessonsOf(db, id),
  };
}

/** A coach's own students. */
export function students(api: FastifyInstance, context: HubContext): void {
  const { db } = context;
  listRoute(api, context);
  typed(api).get(
    '/students/:studentId',
    {
      config: config({ who: 'coach-of', of: 'student' }),
      schema: { params: one('student') },
    },
    ({ params }) => viewOf(context, params.studentId!),
  );
  typed(api).patch(
    '/students/:studentId',
    {
      config: config({ who: 'coach-of', of: 'student' }),
      schema: {
        params: one('student'),
        body: only({
          name: Type.Optional(line(80)),
          hand: Type.Optional(Type.Union([Type.Literal('left'), Type.Literal('right')])),
        }),
      },
    },
    async ({ params, body }, reply) => {
      if (Object.keys(body).length > 0)
        await db.updateTable('person').set(body).where('id', '=', params.studentId!).execute();
      return reply.code(204).send();
    },
  );
  typed(api).get(
    '/students/:studentId/last',
    {
      config: config({ who: 'student-or-coach', of: 'student' }),
      schema: { params: one('student') },
    },
    async ({ params }): Promise<LastValues> => {
      const row = await db
        .selectFrom('session')
        .select('spreads')
        .where('studentId', '=', params.studentId!)
        .where('analysed', '=', 1)
        .where('rehearsals', '>', 0)
        .orderBy('startedMs', 'desc')
        .limit(1)
        .executeTakeFirst();
      return row === undefined
        ? {}
        : (JSON.parse(row.spreads) as { rehearsals: SpreadsView }).rehearsals;
    },
  );
}
