import type { FastifyInstance } from 'fastify';
import Type, { type Static } from 'typebox';
import { Refused } from '../../streaming/apiErrors.ts';
import type { Inbox } from '../../streaming/hubContract/machine.ts';
import { machine } from '../access/guard.ts';
import { note } from '../log/log.ts';
import type { HubContext } from '../context.ts';
import { CLIENT_ID, ID, config, only, orNull, typed, words } from '../parts/api.ts';
import { etagOf } from '../parts/unchanged.ts';
import { inboxOf } from './inbox.ts';
import { newsOf } from './news.ts';
import { notesRoute } from './notes.ts';
import { sessionOf } from './sessionOf.ts';

/** With `if-none-match` the answer is held back until there is another one, for so long at most. */
const WAIT = only({ waitS: Type.Optional(Type.Integer({ minimum: 1, maximum: 50 })) });

const byMachine = { config: config({ who: 'machine' }) };

const COMMENT = only({
  id: Type.String({ pattern: '^[A-Za-z0-9]{16,64}$' }),
  clientId: CLIENT_ID,
  text: words(4000),
  index: orNull(Type.Integer({ minimum: 1, maximum: 1e6 })),
  replyTo: orNull(ID),
});

/** What a student's machine fetches and answers. */
export function machineRoutes(api: FastifyInstance, context: HubContext): void {
  const { db, now } = context;
  typed(api).get(
    '/machine/inbox',
    { ...byMachine, schema: { querystring: WAIT } },
    async (request, reply): Promise<Inbox> => {
      const asking = machine(request);
      const inbox = await inboxOf(context, asking.studentId);
      const { waitS } = request.query;
      const unchanged = request.headers['if-none-match'] === etagOf(JSON.stringify(inbox));
      if (waitS === undefined || !unchanged) return inbox;
      await newsOf(context).wait(asking, waitS * 1000, (left) => reply.raw.once('close', left));
      return inboxOf(context, asking.studentId);
    },
  );
  typed(api).post(
    '/machine/comments',
    { ...byMachine, schema: { body: COMMENT } },
    async (request, reply) => {
      await addComment(context, machine(request).studentId, request.body);
      return reply.code(204).send();
    },
  );
  notesRoute(api, context);
  typed(api).post(
    '/machine/plan-seen',
    { ...byMachine, schema: { body: only({ planId: ID }) } },
    async (request, reply) => {
      await db
        .updateTable('plan')
        .set({ reachedMs: now() })
        .where('id', '=', request.body.planId)
        .where('studentId', '=', machine(request).studentId)
        .where('reachedMs', 'is', null)
        .execute();
      return reply.code(204).send();
    },
  );
  api.delete('/machine', byMachine, async (request, reply) => {
    await db
      .updateTable('machine')
      .set({ revokedMs: now() })
      .where('id', '=', machine(request).id)
      .execute();
    await note(context, request, 'revoke', { machine: machine(request).id, how: 'itself' });
    return reply.code(204).send();
  });
}

/** The same again is not a second comment. */
async function addComment(
  { db, now }: HubContext,
  studentId: string,
  { id, clientId, text, index, replyTo }: Static<typeof COMMENT>,
): Promise<void> {
  const sessionId = await sessionOf(db, studentId, clientId);
  const there = await db
    .selectFrom('comment')
    .select(['authorId', 'sessionId'])
    .where('id', '=', id)
    .executeTakeFirst();
  if (there?.authorId === studentId && there.sessionId === sessionId) return;
  if (there !== undefined)
    throw new Refused(422, 'exists', 'A comment with this id already exists.');
  if (replyTo !== null) await checkReply(db, sessionId, replyTo);
  await db
    .insertInto('comment')
    .values({
      id,
      sessionId,
      authorId: studentId,
      atMs: now(),
      text,
      repIndex: index,
      momentS: null,
      replyTo,
    })
    .execute();
}

async function checkReply(db: HubContext['db'], sessionId: string, replyTo: string): Promise<void> {
  const found = await db
    .selectFrom('comment')
    .select('id')
    .where('id', '=', replyTo)
    .where('sessionId', '=', sessionId)
    .executeTakeFirst();
  if (found === undefined)
    throw new Refused(422, 'no-comment', 'The comment you reply to was removed.');
}
