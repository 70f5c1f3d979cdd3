import type { FastifyInstance } from 'fastify';
import Type from 'typebox';
import type { Plan } from '../../coaching/plan.ts';
import { detectedKind } from '../../coaching/asSaid.ts';
import { Refused } from '../../streaming/apiErrors.ts';
import type { Relabel } from '../../streaming/hubContract/review.ts';
import { person } from '../access/guard.ts';
import { note } from '../log/log.ts';
import { requeue } from '../analysis/requeue.ts';
import type { HubContext } from '../context.ts';
import type { Db } from '../db/open.ts';
import type { SessionTable } from '../db/tables.ts';
import { ID, config, one, only, typed } from '../parts/api.ts';
import { readResult } from './result.ts';
import { countsWith } from './sessionViews.ts';

export async function relabelsOf(db: Db, sessionId: string): Promise<Relabel[]> {
  return db
    .selectFrom('relabel')
    .innerJoin('person', 'person.id', 'relabel.byId')
    .select([
      'relabel.repIndex as index',
      'relabel.kind',
      'relabel.originalKind',
      'relabel.atMs',
      'person.name as by',
    ])
    .where('relabel.sessionId', '=', sessionId)
    .orderBy('relabel.repIndex')
    .execute();
}

export const sessionRow = (db: Db, id: string): Promise<SessionTable> =>
  db.selectFrom('session').selectAll().where('id', '=', id).executeTakeFirstOrThrow();

const COACH_OF_SESSION = config({ who: 'coach-of', of: 'session' });

/** The coach's mark, and kinds set by hand. */
export function reviewing(api: FastifyInstance, context: HubContext): void {
  const { db, now, places } = context;
  typed(api).put(
    '/sessions/:sessionId/reviewed',
    {
      config: COACH_OF_SESSION,
      schema: { params: one('session'), body: only({ reviewed: Type.Boolean() }) },
    },
    async (request, reply) => {
      const { reviewed } = request.body;
      await db
        .updateTable('session')
        .set(
          reviewed
            ? { reviewedMs: now(), reviewedBy: person(request).id, reviewedIn: null }
            : { reviewedMs: null, reviewedBy: null, reviewedIn: null },
        )
        .where('id', '=', request.params.sessionId!)
        .execute();
      return reply.code(204).send();
    },
  );
  typed(api).put(
    '/sessions/:sessionId/relabels/:index',
    {
      config: COACH_OF_SESSION,
      schema: {
        params: Type.Object({ sessionId: ID, index: Type.Integer({ minimum: 1, maximum: 1e6 }) }),
        body: only({
          kind: Type.Union([
            Type.Literal('rehearsal'),
            Type.Literal('ball'),
            Type.Literal('ignore'),
            Type.Null(),
          ]),
        }),
      },
    },
    async (request, reply) => {
      const { sessionId, index } = request.params;
      const { kind } = request.body as { kind: Relabel['kind'] | null };
      const row = await sessionRow(db, sessionId);
      const analysis = await readResult(places, row.studentId, sessionId);
      const repetition = analysis?.repetitions.find((r) => r.index === index);
      if (analysis === null || repetition === undefined)
        throw new Refused(404, 'not-found', `This session has no repetition ${index}.`);
      const before = await db
        .deleteFrom('relabel')
        .where('sessionId', '=', sessionId)
        .where('repIndex', '=', index)
        .returning('originalKind')
        .executeTakeFirst();
      if (kind !== null)
        await db
          .insertInto('relabel')
          .values({
            sessionId,
            repIndex: index,
            kind,
            // What was measured, also where a label has been set before.
            originalKind: before?.originalKind ?? detectedKind(repetition),
            atS: repetition.topS,
            byId: person(request).id,
            atMs: now(),
          })
          .execute();
      const counts = countsWith(
        analysis,
        JSON.parse(row.plan) as Plan,
        await relabelsOf(db, sessionId),
        index,
      );
      await db.updateTable('session').set(counts).where('id', '=', sessionId).execute();
      // The count above is there at once; the analysis with the label follows.
      await requeue(context, sessionId);
      await note(context, request, 'relabel', { session: sessionId, repetition: index });
      return reply.code(204).send();
    },
  );
}
