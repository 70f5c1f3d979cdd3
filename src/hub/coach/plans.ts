import type { FastifyInstance } from 'fastify';
import Type from 'typebox';
import type { Plan } from '../../coaching/plan.ts';
import { validatePlan } from '../../coaching/validatePlan.ts';
import { Refused } from '../../streaming/apiErrors.ts';
import type { PlanTemplate, PlanVersion } from '../../streaming/hubContract/students.ts';
import { person } from '../access/guard.ts';
import { newId } from '../access/secrets.ts';
import { note } from '../audit.ts';
import type { HubContext } from '../context.ts';
import { ID, config, line, one, only, typed } from '../parts/api.ts';
import { planVersions } from './planVersions.ts';

const COACH = config({ who: 'coach' });

/** @throws Refused with every sentence that is wrong */
function checked(value: unknown): Plan {
  const { plan, problems } = validatePlan(value);
  if (plan !== undefined) return plan;
  throw new Refused(400, 'bad-plan', problems.map(({ message }) => message).join(' '));
}

function versionRoutes(api: FastifyInstance, context: HubContext): void {
  const { db, now } = context;
  typed(api).get(
    '/students/:studentId/plans',
    {
      config: config({ who: 'student-or-coach', of: 'student' }),
      schema: { params: one('student') },
    },
    ({ params }) => planVersions(db, params.studentId!),
  );
  typed(api).post(
    '/students/:studentId/plans',
    {
      config: config({ who: 'coach-of', of: 'student' }),
      schema: {
        params: one('student'),
        body: only({ plan: Type.Unknown(), validFromMs: Type.Number({ minimum: 0 }) }),
      },
    },
    async (request, reply): Promise<PlanVersion> => {
      const studentId = request.params.studentId!;
      const plan = checked(request.body.plan);
      const id = newId();
      await db.transaction().execute(async (t) => {
        const last = await t
          .selectFrom('plan')
          .select((e) => e.fn.max('number').as('number'))
          .where('studentId', '=', studentId)
          .executeTakeFirst();
        await t
          .insertInto('plan')
          .values({
            id,
            studentId,
            number: Number(last?.number ?? 0) + 1,
            plan: JSON.stringify(plan),
            validFromMs: request.body.validFromMs,
            createdMs: now(),
            byId: person(request).id,
            reachedMs: null,
          })
          .execute();
      });
      await note(context, request, 'plan', `student ${studentId}`);
      reply.code(201);
      const version = (await planVersions(db, studentId)).find((v) => v.id === id);
      if (version === undefined) throw new Error('the new version is gone');
      return version;
    },
  );
}

function templateRoutes(api: FastifyInstance, { db }: HubContext): void {
  api.get('/templates', { config: COACH }, async (request): Promise<PlanTemplate[]> => {
    const rows = await db
      .selectFrom('template')
      .select(['id', 'name', 'plan'])
      .where('coachId', '=', person(request).id)
      .orderBy('name')
      .execute();
    return rows.map(({ plan, ...row }) => ({ ...row, plan: JSON.parse(plan) as Plan }));
  });
  typed(api).post(
    '/templates',
    { config: COACH, schema: { body: only({ name: line(80), plan: Type.Unknown() }) } },
    async (request, reply): Promise<PlanTemplate> => {
      const plan = checked(request.body.plan);
      const template = { id: newId(), name: request.body.name };
      await db
        .insertInto('template')
        .values({ ...template, coachId: person(request).id, plan: JSON.stringify(plan) })
        .execute();
      reply.code(201);
      return { ...template, plan };
    },
  );
  typed(api).delete(
    '/templates/:templateId',
    { config: COACH, schema: { params: Type.Object({ templateId: ID }) } },
    async (request, reply) => {
      const { numDeletedRows } = await db
        .deleteFrom('template')
        .where('id', '=', request.params.templateId)
        .where('coachId', '=', person(request).id)
        .executeTakeFirst();
      if (numDeletedRows === 0n) throw new Refused(404, 'not-found', 'Template not found.');
      return reply.code(204).send();
    },
  );
}

/** Plans of students in versions, and templates. */
export function plans(api: FastifyInstance, context: HubContext): void {
  versionRoutes(api, context);
  templateRoutes(api, context);
}
