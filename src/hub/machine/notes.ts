import type { FastifyInstance } from 'fastify';
import Type from 'typebox';
import { PAIN_FROM } from '../../coaching/concerns.ts';
import { LONGEST_NOTE } from '../../sessions/practiceNotes.ts';
import type { MachineNotes } from '../../streaming/hubContract/machine.ts';
import { machine } from '../access/guard.ts';
import type { HubContext } from '../context.ts';
import { CLIENT_ID, config, only, orNull, typed } from '../parts/api.ts';
import { sessionOf } from './sessionOf.ts';

const pain = orNull(Type.Integer({ minimum: 0, maximum: 10 }));
const NOTES = only({
  note: Type.String({ maxLength: LONGEST_NOTE }),
  painBefore: pain,
  painAfter: pain,
});
const NAMED = only({ clientId: CLIENT_ID });

/** A note that was edited after its session had been sent. */
export function notesRoute(api: FastifyInstance, context: HubContext): void {
  typed(api).patch(
    '/machine/sessions/:clientId/notes',
    { config: config({ who: 'machine' }), schema: { params: NAMED, body: NOTES } },
    async (request, reply) => {
      const { studentId } = machine(request);
      const id = await sessionOf(context.db, studentId, request.params.clientId);
      await replaceNotes(context, id, request.body);
      return reply.code(204).send();
    },
  );
}

/** A rating before that rises below pain would only make the rise during the practice look smaller. */
const before = (old: number | null, next: number | null): number | null =>
  old !== null && next !== null && next < PAIN_FROM ? old : higher(old, next);

const higher = (a: number | null, b: number | null): number | null =>
  a === null || b === null ? (a ?? b) : Math.max(a, b);

/** What is the same as before is no edit. */
async function replaceNotes(
  { db, now }: HubContext,
  id: string,
  { note, painBefore, painAfter }: MachineNotes,
): Promise<void> {
  await db.transaction().execute(async (transaction) => {
    const old = await transaction
      .selectFrom('session')
      .select(['note', 'painBefore', 'painAfter'])
      .where('id', '=', id)
      .executeTakeFirstOrThrow();
    await transaction
      .updateTable('session')
      .set({
        note,
        painBefore: before(old.painBefore, painBefore),
        painAfter: higher(old.painAfter, painAfter),
        ...(note !== old.note && { noteEditedMs: now() }),
      })
      .where('id', '=', id)
      .execute();
  });
}
