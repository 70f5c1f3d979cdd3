import type { FastifyInstance } from 'fastify';
import Type from 'typebox';
import { type RankedNeed, compareAttention } from '../../coaching/attention.ts';
import type {
  LastValues,
  Need,
  StudentList,
  StudentView,
} from '../../streaming/hubContract/students.ts';
import type { SpreadsView } from '../../streaming/sessionsContract.ts';
import { person } from '../access/guard.ts';
import type { HubContext } from '../context.ts';
import { config, line, one, only, typed } from '../parts/api.ts';
import { namesOf } from '../people/pairing.ts';
import { countsIn } from './counting.ts';
import { studentFacts } from './facts.ts';
import { lessonsOf } from './lessons.ts';
import { painClosingsOf } from './painClosings.ts';
import { planNow, reachedMs } from './planVersions.ts';

const shown = (need: RankedNeed): Need => ({
  code: need.code,
  text: need.text,
  sessionId: need.sessionId ?? null,
  atMs: need.atMs ?? null,
  quote: need.quote ?? null,
  answerTo: need.answerTo ?? null,
});

function listRoute(api: FastifyInstance, context: HubContext): void {
  api.get(
    '/students',
    { config: config({ who: 'coach' }) },
    async (request): Promise<StudentList> => {
      const facts = await studentFacts(context, { coachId: person(request).id });
      return {
        students: facts
          .sort(compareAttention)
          .map(({ joinedMs: _joined, sessions: _sessions, openPain: _pain, ...row }) => ({
            ...row,
            needs: row.needs.map(shown),
          })),
      };
    },
  );
}

async function viewOf(context: HubContext, id: string): Promise<StudentView> {
  const { db } = context;
  const [known] = await studentFacts(context, { studentId: id });
  if (known === undefined) throw new Error('the guard let a student through who is not there');
  const machines = await db
    .selectFrom('machine')
    .select('lastSeenMs')
    .where('studentId', '=', id)
    .where('revokedMs', 'is', null)
    .execute();
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
    needs: known.needs.map(shown),
    plan,
    nextSessionId: known.nextSessionId,
    painClosings: await painClosingsOf(db, id),
    planReachedMs: await reachedMs(db, plan.id),
    sessions: known.sessions,
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
        .where(countsIn('session'))
        .orderBy('startedMs', 'desc')
        .limit(1)
        .executeTakeFirst();
      return row === undefined
        ? {}
        : (JSON.parse(row.spreads) as { rehearsals: SpreadsView }).rehearsals;
    },
  );
}
