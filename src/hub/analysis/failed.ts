import type { FastifyInstance } from 'fastify';
import Type from 'typebox';
import { Refused } from '../../streaming/apiErrors.ts';
import type { FailedAnalysis } from '../../streaming/hubContract/people.ts';
import type { HubContext } from '../context.ts';
import { ID, config, one, typed } from '../parts/api.ts';
import { requeue } from './requeue.ts';

/** The owner sees whose coach it concerns and why, not whose practice it is. A page holds so many. */
const MOST = 100;

const NOT_FAILED = new Refused(409, 'not-failed', 'This analysis has not failed.');

/** Analyses that were given up: seen by the owner, started again by them and by the student's coach. */
export function failedAnalyses(api: FastifyInstance, context: HubContext): void {
  const { db } = context;
  const again = async (sessionId: string): Promise<void> => {
    const row = await db
      .selectFrom('session')
      .leftJoin('job', 'job.sessionId', 'session.id')
      .select(['session.problem', 'job.deadIn'])
      .where('session.id', '=', sessionId)
      .executeTakeFirst();
    if ((row?.problem ?? row?.deadIn ?? null) === null) throw NOT_FAILED;
    await requeue(context, sessionId);
  };
  const owner = { config: config({ who: 'owner' }) };
  api.get('/club/failed-analyses', owner, (): Promise<FailedAnalysis[]> => failedOf(context));
  typed(api).post(
    '/club/failed-analyses/:sessionId',
    { ...owner, schema: { params: Type.Object({ sessionId: ID }) } },
    async (request, reply) => {
      await again(request.params.sessionId);
      return reply.code(204).send();
    },
  );
  typed(api).post(
    '/sessions/:sessionId/analysis',
    {
      config: config({ who: 'coach-of', of: 'session' }),
      schema: { params: one('session') },
    },
    async (request, reply) => {
      await again(request.params.sessionId!);
      return reply.code(204).send();
    },
  );
}

const failedOf = ({ db }: HubContext): Promise<FailedAnalysis[]> =>
  db
    .selectFrom('job')
    .innerJoin('session', 'session.id', 'job.sessionId')
    .innerJoin('person as student', 'student.id', 'session.studentId')
    .innerJoin('person as coach', 'coach.id', 'student.coachId')
    .select(['session.id', 'coach.name as coach', 'session.receivedMs', 'job.tries'])
    .select((e) => [
      e.fn.coalesce('job.failedMs', 'job.queuedMs').as('failedMs'),
      e.fn.coalesce('job.problem', e.val('')).as('problem'),
    ])
    .where('job.deadIn', 'is not', null)
    .orderBy('job.failedMs', 'desc')
    .limit(MOST)
    .execute();
