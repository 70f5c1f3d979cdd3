import type { FastifyInstance } from 'fastify';
import Type from 'typebox';
import { Refused } from '../../streaming/apiErrors.ts';
import type { TextBlock } from '../../streaming/hubContract/review.ts';
import { person } from '../access/guard.ts';
import { newId } from '../access/secrets.ts';
import type { HubContext } from '../context.ts';
import { ID, config, line, only, typed, words } from '../parts/api.ts';

const COACH = config({ who: 'coach' });
const BODY = only({ title: line(80), text: words(2000) });
const PARAMS = Type.Object({ blockId: ID });

/** Ready texts of the coach's own. */
export function blocks(api: FastifyInstance, { db }: HubContext): void {
  api.get('/blocks', { config: COACH }, (request): Promise<TextBlock[]> =>
    db
      .selectFrom('block')
      .select(['id', 'title', 'text'])
      .where('coachId', '=', person(request).id)
      .orderBy('title')
      .execute(),
  );
  typed(api).post(
    '/blocks',
    { config: COACH, schema: { body: BODY } },
    async (request, reply): Promise<TextBlock> => {
      const block = { id: newId(), ...request.body };
      await db
        .insertInto('block')
        .values({ ...block, coachId: person(request).id })
        .execute();
      reply.code(201);
      return block;
    },
  );
  typed(api).put(
    '/blocks/:blockId',
    { config: COACH, schema: { params: PARAMS, body: BODY } },
    async (request): Promise<TextBlock> => {
      const { blockId } = request.params;
      const { numUpdatedRows } = await db
        .updateTable('block')
        .set(request.body)
        .where('id', '=', blockId)
        .where('coachId', '=', person(request).id)
        .executeTakeFirst();
      if (numUpdatedRows === 0n) throw new Refused(404, 'not-found', 'Text snippet not found.');
      return { id: blockId, ...request.body };
    },
  );
  typed(api).delete(
    '/blocks/:blockId',
    { config: COACH, schema: { params: PARAMS } },
    async (request, reply) => {
      const { numDeletedRows } = await db
        .deleteFrom('block')
        .where('id', '=', request.params.blockId)
        .where('coachId', '=', person(request).id)
        .executeTakeFirst();
      if (numDeletedRows === 0n) throw new Refused(404, 'not-found', 'Text snippet not found.');
      return reply.code(204).send();
    },
  );
}
