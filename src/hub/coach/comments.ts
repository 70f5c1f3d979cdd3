import type { FastifyInstance } from 'fastify';
import Type from 'typebox';
import { Refused } from '../../streaming/apiErrors.ts';
import type { Comment } from '../../streaming/hubContract/review.ts';
import { person } from '../access/guard.ts';
import { newId } from '../access/secrets.ts';
import type { HubContext } from '../context.ts';
import type { Db } from '../db/open.ts';
import { ID, config, one, only, orNull, typed, words } from '../parts/api.ts';

/** What was said about a session, oldest first, as `readerId` sees it. */
export async function commentsOf(db: Db, sessionId: string, readerId: string): Promise<Comment[]> {
  const rows = await db
    .selectFrom('comment')
    .innerJoin('person', 'person.id', 'comment.authorId')
    .select([
      'comment.id',
      'comment.authorId',
      'comment.atMs',
      'comment.text',
      'comment.repIndex as index',
      'comment.momentS',
      'comment.replyTo',
      'comment.onNote',
      'person.name as by',
      'person.role',
    ])
    .where('comment.sessionId', '=', sessionId)
    .orderBy('comment.atMs')
    .execute();
  return rows.map(({ authorId, role, onNote, ...row }) => ({
    ...row,
    onNote: onNote === 1,
    byRole: role === 'student' ? 'student' : 'coach',
    mine: authorId === readerId,
  }));
}

/** An answer belongs to a comment of the same session. */
async function refuseElsewhere(db: Db, sessionId: string, commentId: string): Promise<void> {
  const found = await db
    .selectFrom('comment')
    .select('id')
    .where('id', '=', commentId)
    .where('sessionId', '=', sessionId)
    .executeTakeFirst();
  if (found === undefined)
    throw new Refused(404, 'not-found', 'The comment you reply to was removed.');
}

const OF_SESSION = config({ who: 'student-or-coach', of: 'session' });

/** What student and coach write to each other about a session. */
export function comments(api: FastifyInstance, { db, now }: HubContext): void {
  typed(api).post(
    '/sessions/:sessionId/comments',
    {
      config: OF_SESSION,
      schema: {
        params: one('session'),
        body: only({
          text: words(4000),
          index: Type.Optional(orNull(Type.Integer({ minimum: 1, maximum: 1e6 }))),
          momentS: Type.Optional(orNull(Type.Number({ minimum: 0, maximum: 1e6 }))),
          replyTo: Type.Optional(orNull(ID)),
          onNote: Type.Optional(Type.Boolean()),
        }),
      },
    },
    async (request, reply): Promise<Comment> => {
      const sessionId = request.params.sessionId!;
      const { id: authorId } = person(request);
      const body = request.body as {
        text: string;
        index?: number | null;
        momentS?: number | null;
        replyTo?: string | null;
        onNote?: boolean;
      };
      if (body.replyTo) await refuseElsewhere(db, sessionId, body.replyTo);
      const id = newId();
      await db
        .insertInto('comment')
        .values({
          id,
          sessionId,
          authorId,
          atMs: now(),
          text: body.text,
          repIndex: body.index ?? null,
          momentS: body.momentS ?? null,
          replyTo: body.replyTo ?? null,
          onNote: body.onNote === true ? 1 : 0,
        })
        .execute();
      reply.code(201);
      const made = (await commentsOf(db, sessionId, authorId)).find((c) => c.id === id);
      if (made === undefined) throw new Error('the new comment is gone');
      return made;
    },
  );
  typed(api).delete(
    '/comments/:commentId',
    {
      config: config({ who: 'student-or-coach', of: 'comment' }),
      schema: { params: one('comment') },
    },
    async (request, reply) => {
      const id = request.params.commentId!;
      const { numDeletedRows } = await db
        .deleteFrom('comment')
        .where('id', '=', id)
        .where('authorId', '=', person(request).id)
        .executeTakeFirst();
      if (numDeletedRows === 0n)
        throw new Refused(403, 'forbidden', 'Only the author can remove this.');
      // What answered it stays, on its own.
      await db.updateTable('comment').set({ replyTo: null }).where('replyTo', '=', id).execute();
      return reply.code(204).send();
    },
  );
}
