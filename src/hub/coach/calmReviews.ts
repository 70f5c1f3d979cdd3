import type { FastifyInstance } from 'fastify';
import Type from 'typebox';
import { sql } from 'kysely';
import { Refused } from '../../streaming/apiErrors.ts';
import type { CalmReview } from '../../streaming/hubContract/students.ts';
import { person } from '../access/guard.ts';
import { newId } from '../access/secrets.ts';
import { note } from '../log/log.ts';
import type { HubContext } from '../context.ts';
import { newsOf } from '../machine/news.ts';
import { ID, config, typed } from '../parts/api.ts';
import { countsIn } from './counting.ts';
import { CALM, studentFacts } from './facts.ts';

/** So long all of it can be taken back, ms. A choice. */
const UNDO_MS = 3_600_000;

interface Marked {
  readonly studentId: string;
}

/** Their machines show what was reviewed. */
function tell(context: HubContext, rows: readonly Marked[]): void {
  for (const id of new Set(rows.map(({ studentId }) => studentId))) newsOf(context).tell(id);
}

/** Sessions that need no look, marked as reviewed together. */
export function calmReviews(api: FastifyInstance, context: HubContext): void {
  const { db, now } = context;
  api.post(
    '/calm-reviews',
    { config: config({ who: 'coach' }) },
    async (request, reply): Promise<CalmReview> => {
      const { id: coachId } = person(request);
      const id = newId();
      const calm = (await studentFacts(context, { coachId })).filter((s) => s.calm > 0);
      const marked = await db.transaction().execute(async (t) => {
        const all: Marked[] = [];
        for (const { id: studentId } of calm) {
          const { rows } = await sql<Marked>`
            update session as s set reviewedMs = ${now()}, reviewedBy = ${coachId}, reviewedIn = ${id}
            where s.studentId = ${studentId} and ${countsIn('s')} and ${CALM} returning studentId`.execute(
            t,
          );
          all.push(...rows);
        }
        return all;
      });
      tell(context, marked);
      await note(context, request, 'review-calm', { sessions: marked.length });
      reply.code(201);
      return { id, sessions: marked.length };
    },
  );
  typed(api).delete(
    '/calm-reviews/:calmReviewId',
    {
      config: config({ who: 'coach' }),
      schema: { params: Type.Object({ calmReviewId: ID }) },
    },
    async (request, reply) => {
      const id = request.params.calmReviewId;
      const marked = await db
        .updateTable('session')
        .set({ reviewedMs: null, reviewedBy: null, reviewedIn: null })
        .where('reviewedIn', '=', id)
        .where('reviewedBy', '=', person(request).id)
        .where('reviewedMs', '>', now() - UNDO_MS)
        .returning('studentId')
        .execute();
      if (marked.length === 0)
        throw new Refused(
          404,
          'not-found',
          'Nothing to undo. It was undone already, or it is more than an hour ago.',
        );
      tell(context, marked);
      await note(context, request, 'review-undo', { sessions: marked.length });
      return reply.code(204).send();
    },
  );
}
