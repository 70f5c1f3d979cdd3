import type { FastifyInstance } from 'fastify';
import Type from 'typebox';
import type { Lesson } from '../../streaming/hubContract/students.ts';
import { newId } from '../access/secrets.ts';
import type { HubContext } from '../context.ts';
import type { Db } from '../db/open.ts';
import { config, one, only, typed, words } from '../parts/api.ts';

/** Newest first. */
export const lessonsOf = (db: Db, studentId: string): Promise<Lesson[]> =>
  db
    .selectFrom('lesson')
    .select(['id', 'atMs', 'text'])
    .where('studentId', '=', studentId)
    .orderBy('atMs', 'desc')
    .execute();

/** Days on which coach and student met. */
export function lessons(api: FastifyInstance, { db }: HubContext): void {
  typed(api).post(
    '/students/:studentId/lessons',
    {
      config: config({ who: 'coach-of', of: 'student' }),
      schema: {
        params: one('student'),
        body: only({ atMs: Type.Number({ minimum: 0 }), text: words(500) }),
      },
    },
    async ({ params, body }, reply): Promise<Lesson> => {
      const lesson = { id: newId(), ...body };
      await db
        .insertInto('lesson')
        .values({ ...lesson, studentId: params.studentId! })
        .execute();
      reply.code(201);
      return lesson;
    },
  );
  typed(api).delete(
    '/lessons/:lessonId',
    { config: config({ who: 'coach-of', of: 'lesson' }), schema: { params: one('lesson') } },
    async ({ params }, reply) => {
      await db.deleteFrom('lesson').where('id', '=', params.lessonId!).execute();
      return reply.code(204).send();
    },
  );
}
