import type { FastifyInstance } from 'fastify';
import Type from 'typebox';
import type { ClubStudent, ClubView } from '../../streaming/hubContract/people.ts';
import { Refused } from '../../streaming/apiErrors.ts';
import { person } from '../access/guard.ts';
import { note } from '../log/log.ts';
import type { HubContext } from '../context.ts';
import { ID, config, only, typed } from '../parts/api.ts';
import { clubOf } from './accounts.ts';
import { endInvitations } from './endings.ts';

const OWNER = config({ who: 'owner' });
const NO_COACH = new Refused(404, 'not-found', 'Coach not found.');

async function coachRows({ db }: HubContext): Promise<ClubView['coaches']> {
  const rows = await db
    .selectFrom('person as coach')
    .leftJoin('person as student', 'student.coachId', 'coach.id')
    .select(['coach.id', 'coach.name', 'coach.role', 'coach.active'])
    .select((e) => e.fn.count<number>('student.id').as('students'))
    .where('coach.role', 'in', ['owner', 'coach'])
    .groupBy(['coach.id', 'coach.name', 'coach.role', 'coach.active'])
    .orderBy('coach.name')
    .execute();
  return rows.map(({ role, active, students, ...row }) => ({
    ...row,
    role: role === 'owner' ? 'owner' : 'coach',
    active: active === 1,
    students: Number(students),
  }));
}

function coachRoutes(api: FastifyInstance, context: HubContext): void {
  const { db } = context;
  api.get('/club', { config: OWNER }, async (): Promise<ClubView> => ({
    club: await clubOf(db),
    coaches: await coachRows(context),
  }));
  typed(api).patch(
    '/coaches/:coachId',
    {
      config: OWNER,
      schema: { params: Type.Object({ coachId: ID }), body: only({ active: Type.Boolean() }) },
    },
    async (request, reply) => {
      const { coachId } = request.params;
      const { active } = request.body;
      if (coachId === person(request).id)
        throw new Refused(409, 'yourself', 'You cannot deactivate your own account.');
      const row = await db
        .updateTable('person')
        .set({ active: active ? 1 : 0 })
        .where('id', '=', coachId)
        .where('role', 'in', ['owner', 'coach'])
        .returning('name')
        .executeTakeFirst();
      if (row === undefined) throw NO_COACH;
      if (!active) {
        await db.deleteFrom('signin').where('personId', '=', coachId).execute();
        await db
          .deleteFrom('invite')
          .where('byId', '=', coachId)
          .where('usedMs', 'is', null)
          .execute();
      }
      await note(context, request, active ? 'let-in' : 'lock-out', { person: coachId });
      return reply.code(204).send();
    },
  );
}

/** The owner moves students without seeing what they do: names only. */
function studentRoutes(api: FastifyInstance, context: HubContext): void {
  const { db } = context;
  api.get('/club/students', { config: OWNER }, async (): Promise<ClubStudent[]> => {
    const rows = await db
      .selectFrom('person')
      .select(['id', 'name', 'coachId'])
      .where('role', '=', 'student')
      .orderBy('name')
      .execute();
    return rows.map(({ coachId, ...row }) => ({ ...row, coachId: coachId ?? '' }));
  });
  typed(api).put(
    '/students/:studentId/coach',
    {
      config: OWNER,
      schema: { params: Type.Object({ studentId: ID }), body: only({ coachId: ID }) },
    },
    async (request, reply) => {
      const coach = await db
        .selectFrom('person')
        .select('name')
        .where('id', '=', request.body.coachId)
        .where('role', 'in', ['owner', 'coach'])
        .where('active', '=', 1)
        .executeTakeFirst();
      if (coach === undefined) throw NO_COACH;
      const student = await db
        .updateTable('person')
        .set({ coachId: request.body.coachId })
        .where('id', '=', request.params.studentId)
        .where('role', '=', 'student')
        .returning('name')
        .executeTakeFirst();
      if (student === undefined) throw new Refused(404, 'not-found', 'Not found.');
      await endInvitations(db, request.params.studentId);
      await note(context, request, 'move', {
        person: request.params.studentId,
        coach: request.body.coachId,
      });
      return reply.code(204).send();
    },
  );
}

/** The club, for its owner. */
export function club(api: FastifyInstance, context: HubContext): void {
  coachRoutes(api, context);
  studentRoutes(api, context);
}
