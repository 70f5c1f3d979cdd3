import type { FastifyInstance } from 'fastify';
import Type from 'typebox';
import type { Plan } from '../../coaching/plan.ts';
import { validatePlan } from '../../coaching/validatePlan.ts';
import { Refused } from '../../streaming/apiErrors.ts';
import type {
  NewPlan,
  PlanConflict,
  PlanTemplate,
  PlanVersion,
} from '../../streaming/hubContract/students.ts';
import { person } from '../access/guard.ts';
import { newId } from '../access/secrets.ts';
import { note } from '../log/log.ts';
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

interface Written extends NewPlan {
  readonly studentId: string;
  readonly byId: string;
}

/** @returns id of the new version; `null` where another was saved since the one it is based on */
const addVersion = ({ db, now }: HubContext, written: Written): Promise<string | null> =>
  db.transaction().execute(async (t) => {
    const { studentId, byId, plan, validFromMs, basedOn } = written;
    const last = await t
      .selectFrom('plan')
      .select((e) => e.fn.max('number').as('number'))
      .where('studentId', '=', studentId)
      .executeTakeFirst();
    const newest = Number(last?.number ?? 0);
    if (newest > basedOn) return null;
    const id = newId();
    await t
      .insertInto('plan')
      .values({
        id,
        studentId,
        number: newest + 1,
        plan: JSON.stringify(plan),
        validFromMs,
        createdMs: now(),
        byId,
        reachedMs: null,
      })
      .execute();
    return id;
  });

const conflict = (newest: PlanVersion): PlanConflict => ({
  error: {
    code: 'plan-changed',
    message: `${newest.by === '' ? 'Somebody' : newest.by} saved version ${newest.number} of this plan meanwhile. Nothing was saved: compare both and choose.`,
  },
  newest,
});

function versionRoutes(api: FastifyInstance, context: HubContext): void {
  const { db } = context;
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
        body: only({
          plan: Type.Unknown(),
          validFromMs: Type.Number({ minimum: 0 }),
          basedOn: Type.Integer({ minimum: 0 }),
        }),
      },
    },
    async (request, reply): Promise<PlanVersion | PlanConflict> => {
      const studentId = request.params.studentId!;
      const plan = checked(request.body.plan);
      const byId = person(request).id;
      const id = await addVersion(context, { studentId, byId, ...request.body, plan });
      const versions = await planVersions(db, studentId);
      if (id === null) {
        reply.code(409);
        return conflict(versions[0]!);
      }
      await note(context, request, 'plan', { person: studentId });
      reply.code(201);
      const version = versions.find((v) => v.id === id);
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
