import type { FastifyInstance } from 'fastify';
import { Refused } from '../../streaming/apiErrors.ts';
import { person } from '../access/guard.ts';
import { note } from '../log/log.ts';
import type { HubContext } from '../context.ts';
import { config, line, one, only, typed } from '../parts/api.ts';
import { zipStream } from './exportZip.ts';
import { removeStudent } from './removeStudent.ts';
import { studentEntries } from './studentExport.ts';

/** Everything of one student, to be taken along or deleted. */
export function studentData(api: FastifyInstance, context: HubContext): void {
  const { db } = context;
  typed(api).get(
    '/students/:studentId/export',
    {
      config: config({ who: 'student-or-coach', of: 'student' }),
      schema: { params: one('student') },
    },
    async (request, reply) => {
      const id = request.params.studentId!;
      const body = await zipStream(await studentEntries(context, id, person(request).id));
      await note(context, request, 'export', { person: id });
      return reply
        .type('application/zip')
        .header('content-disposition', `attachment; filename="stillcatch-student-${id}.zip"`)
        .send(body);
    },
  );
  typed(api).delete(
    '/students/:studentId',
    {
      config: config({ who: 'coach-of', of: 'student' }),
      schema: { params: one('student'), body: only({ name: line(80) }) },
    },
    async (request, reply) => {
      const id = request.params.studentId!;
      const student = await db
        .selectFrom('person')
        .select(['id', 'name'])
        .where('id', '=', id)
        .executeTakeFirstOrThrow();
      if (student.name !== request.body.name.trim())
        throw new Refused(400, 'name', 'Name: does not match the student.');
      await removeStudent(context, student);
      await note(context, request, 'delete', { how: 'everything' });
      return reply.code(204).send();
    },
  );
}
