import type { FastifyInstance } from 'fastify';
import { Refused } from '../../streaming/apiErrors.ts';
import type { PainClosing } from '../../streaming/hubContract/students.ts';
import { person } from '../access/guard.ts';
import { newId } from '../access/secrets.ts';
import { note } from '../log/log.ts';
import type { HubContext } from '../context.ts';
import type { Db } from '../db/open.ts';
import { ID, config, one, only, typed, words } from '../parts/api.ts';
import { studentFacts } from './facts.ts';

/** Newest first. */
export const painClosingsOf = (db: Db, studentId: string): Promise<PainClosing[]> =>
  db
    .selectFrom('painClosing')
    .innerJoin('person', 'person.id', 'painClosing.byId')
    .select([
      'painClosing.id',
      'painClosing.sessionId',
      'painClosing.throughMs',
      'painClosing.reason',
      'painClosing.atMs',
      'painClosing.reopenedMs',
      'person.name as by',
    ])
    .where('painClosing.studentId', '=', studentId)
    .orderBy('painClosing.atMs', 'desc')
    .execute();

function closeRoute(api: FastifyInstance, context: HubContext): void {
  const { db, now } = context;
  typed(api).post(
    '/students/:studentId/pain-closings',
    {
      config: config({ who: 'coach-of', of: 'student' }),
      schema: { params: one('student'), body: only({ sessionId: ID, reason: words(1000) }) },
    },
    async (request, reply): Promise<PainClosing> => {
      const studentId = request.params.studentId!;
      const { sessionId, reason } = request.body;
      const [facts] = await studentFacts(context, { studentId });
      const open = facts?.openPain ?? null;
      if (open?.sessionId !== sessionId)
        throw new Refused(
          409,
          'not-open',
          open === null
            ? 'No pain of this student is open.'
            : 'Another session with pain has come meanwhile: look at it first.',
        );
      const { id: byId, name: by } = person(request);
      const closing = { id: newId(), sessionId, throughMs: open.startedMs, reason, atMs: now() };
      await db
        .insertInto('painClosing')
        .values({ ...closing, studentId, byId, reopenedMs: null })
        .execute();
      await note(context, request, 'pain-close', { person: studentId, session: sessionId });
      reply.code(201);
      return { ...closing, by, reopenedMs: null };
    },
  );
}

/** Pain that a coach has looked into, and opens again. */
export function painClosings(api: FastifyInstance, context: HubContext): void {
  const { db, now } = context;
  closeRoute(api, context);
  typed(api).delete(
    '/pain-closings/:painClosingId',
    {
      config: config({ who: 'coach-of', of: 'painClosing' }),
      schema: { params: one('painClosing') },
    },
    async (request, reply) => {
      const { studentId, sessionId } = await db
        .updateTable('painClosing')
        .set((e) => ({ reopenedMs: e.fn.coalesce('reopenedMs', e.val(now())) }))
        .where('id', '=', request.params.painClosingId!)
        .returning(['studentId', 'sessionId'])
        .executeTakeFirstOrThrow();
      await note(context, request, 'pain-reopen', { person: studentId, session: sessionId });
      return reply.code(204).send();
    },
  );
}
