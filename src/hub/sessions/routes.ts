import { createReadStream } from 'node:fs';
import type { FastifyInstance } from 'fastify';
import Type from 'typebox';
import { Refused } from '../../streaming/apiErrors.ts';
import { EXPORTS } from '../../streaming/sessionsContract.ts';
import { download } from '../../streaming/sessionsExport.ts';
import { note } from '../log/log.ts';
import { forget } from '../log/numbers.ts';
import type { HubContext } from '../context.ts';
import { ID, config, one, typed } from '../parts/api.ts';
import { importRoute } from './import.ts';
import { analysisIn, curvesIn, keptSession, overviewIn } from './kept.ts';
import { removeSession } from './remove.ts';

const ofSession = { config: config({ who: 'student-or-coach', of: 'session' }) };
const ID_INDEX = Type.Object({
  sessionId: ID,
  index: Type.Integer({ minimum: 1, maximum: 1e6 }),
});
const ID_FORMAT = Type.Object({
  sessionId: ID,
  format: Type.Union(EXPORTS.map((format) => Type.Literal(format))),
});

const JSON_TYPE = 'application/json; charset=utf-8';

/** What the student's service serves of a session too, in the same shapes; coming by mail, and going. */
export function sessionFiles(api: FastifyInstance, context: HubContext): void {
  viewRoutes(api, context);
  exportRoute(api, context);
  removeRoute(api, context);
  importRoute(api, context);
}

function viewRoutes(api: FastifyInstance, context: HubContext): void {
  typed(api).get(
    '/sessions/:sessionId/overview',
    { ...ofSession, schema: { params: one('session') } },
    async ({ params }, reply) => {
      const packed = await overviewIn(await keptSession(context, params.sessionId!));
      // Every browser takes it packed.
      return reply.type(JSON_TYPE).header('content-encoding', 'gzip').send(packed);
    },
  );
  typed(api).get(
    '/sessions/:sessionId/curves/:index',
    { ...ofSession, schema: { params: ID_INDEX } },
    async ({ params }, reply) => {
      const found = await curvesIn(await keptSession(context, params.sessionId), params.index);
      if (found !== null) return reply.type(JSON_TYPE).send(found);
      throw new Refused(404, 'not-found', `This session has no repetition ${params.index}.`);
    },
  );
}

function exportRoute(api: FastifyInstance, context: HubContext): void {
  typed(api).get(
    '/sessions/:sessionId/export/:format',
    { ...ofSession, schema: { params: ID_FORMAT } },
    async (request, reply) => {
      const { sessionId, format } = request.params;
      const kept = await keptSession(context, sessionId);
      const exported = {
        id: sessionId,
        path: kept.paths.zip,
        zip: () => Promise.resolve(createReadStream(kept.paths.zip)),
      };
      const file = await download(exported, format, () => analysisIn(kept));
      await note(context, request, 'export', { session: sessionId, format });
      return reply
        .type(file.type)
        .header('content-disposition', `attachment; filename="${file.fileName}"`)
        .send(file.body);
    },
  );
}

function removeRoute(api: FastifyInstance, context: HubContext): void {
  typed(api).delete(
    '/sessions/:sessionId',
    { ...ofSession, schema: { params: one('session') } },
    async (request, reply) => {
      const { row } = await keptSession(context, request.params.sessionId!);
      await removeSession(context, row);
      await note(context, request, 'delete', { session: row.id });
      await forget(context.db, 'session', row.id);
      return reply.code(204).send();
    },
  );
}
