import type { FastifyInstance } from 'fastify';
import Type from 'typebox';
import type { Plan } from '../../coaching/plan.ts';
import type { Clip, HubSession, HubSessionList } from '../../streaming/hubContract/review.ts';
import { person } from '../access/guard.ts';
import type { HubContext } from '../context.ts';
import type { Db } from '../db/open.ts';
import type { SessionTable } from '../db/tables.ts';
import { config, one, typed } from '../parts/api.ts';
import { commentsOf } from './comments.ts';
import { studentFacts } from './facts.ts';
import { readResult } from './result.ts';
import { relabelsOf, sessionRow } from './reviewing.ts';
import { isDemonstration } from './counting.ts';
import { summaryOf } from './sessionViews.ts';

const PAGE = 50;

export async function clipsOf(db: Db, sessionId: string): Promise<Clip[]> {
  return db
    .selectFrom('clip')
    .innerJoin('person', 'person.id', 'clip.byId')
    .select([
      'clip.id',
      'clip.name',
      'clip.type',
      'clip.bytes',
      'clip.startS',
      'clip.view',
      'person.name as by',
    ])
    .where('clip.sessionId', '=', sessionId)
    .orderBy('clip.createdMs')
    .execute();
}

async function neighbour(db: Db, row: SessionTable, way: '<' | '>'): Promise<HubSession['older']> {
  const found = await db
    .selectFrom('session')
    .select(['id', 'startedMs'])
    .where('studentId', '=', row.studentId)
    .where('startedMs', way, row.startedMs)
    .orderBy('startedMs', way === '<' ? 'desc' : 'asc')
    .limit(1)
    .executeTakeFirst();
  return found ?? null;
}

const isQueued = async (db: Db, sessionId: string): Promise<boolean> =>
  (await db
    .selectFrom('job')
    .select('sessionId')
    .where('sessionId', '=', sessionId)
    .where('deadIn', 'is', null)
    .executeTakeFirst()) !== undefined;

/** What the list of students says of the session, where the pain that is open there is in it. */
async function openPainIn(
  context: HubContext,
  { id, studentId }: SessionTable,
): Promise<string | null> {
  const [facts] = await studentFacts(context, { studentId });
  const need = facts?.needs.find(({ code }) => code === 'pain');
  return need?.sessionId === id ? need.text : null;
}

async function viewOf(context: HubContext, id: string, readerId: string): Promise<HubSession> {
  const { db, places } = context;
  const row = await sessionRow(db, id);
  const { name } = await db
    .selectFrom('person')
    .select('name')
    .where('id', '=', row.studentId)
    .executeTakeFirstOrThrow();
  return {
    studentId: row.studentId,
    student: name,
    summary: summaryOf(row, await isDemonstration(db)),
    plan: JSON.parse(row.plan) as Plan,
    planNumber: row.planNumber,
    analysis: row.analysed === 1 ? await readResult(places, row.studentId, id) : null,
    notes: {
      note: row.note,
      painBefore: row.painBefore,
      painAfter: row.painAfter,
      editedMs: row.noteEditedMs,
    },
    reviewedMs: row.reviewedMs,
    comments: await commentsOf(db, id, readerId),
    relabels: await relabelsOf(db, id),
    clips: await clipsOf(db, id),
    differences: JSON.parse(row.differences) as string[],
    older: await neighbour(db, row, '<'),
    newer: await neighbour(db, row, '>'),
    analysing: await isQueued(db, id),
    openPain: readerId === row.studentId ? null : await openPainIn(context, row),
  };
}

const OF_SESSION = config({ who: 'student-or-coach', of: 'session' });

/** Sessions of a student and one of them. */
export function sessions(api: FastifyInstance, context: HubContext): void {
  const { db } = context;
  typed(api).get(
    '/students/:studentId/sessions',
    {
      config: config({ who: 'student-or-coach', of: 'student' }),
      schema: {
        params: one('student'),
        querystring: Type.Object({ beforeMs: Type.Optional(Type.Number()) }),
      },
    },
    async ({ params, query }): Promise<HubSessionList> => {
      const rows = await db
        .selectFrom('session')
        .selectAll()
        .select((e) =>
          e
            .selectFrom('comment')
            .whereRef('comment.sessionId', '=', 'session.id')
            .select((c) => c.fn.countAll<number>().as('n'))
            .as('comments'),
        )
        .where('studentId', '=', params.studentId!)
        .$if(query.beforeMs !== undefined, (q) => q.where('startedMs', '<', query.beforeMs ?? 0))
        .orderBy('startedMs', 'desc')
        .limit(PAGE + 1)
        .execute();
      const demonstration = await isDemonstration(db);
      return {
        sessions: rows.slice(0, PAGE).map((row) => ({
          summary: summaryOf(row, demonstration),
          reviewedMs: row.reviewedMs,
          comments: Number(row.comments),
        })),
        more: rows.length > PAGE,
      };
    },
  );
  typed(api).get(
    '/sessions/:sessionId',
    { config: OF_SESSION, schema: { params: one('session') } },
    (request) => viewOf(context, request.params.sessionId!, person(request).id),
  );
}
