import type { Readable } from 'node:stream';
import type { FastifyInstance } from 'fastify';
import Type, { type Static } from 'typebox';
import { Refused } from '../../streaming/apiErrors.ts';
import type { UploadState } from '../../streaming/hubContract/machine.ts';
import { machine } from '../access/guard.ts';
import type { HubContext } from '../context.ts';
import { CLIENT_ID } from '../parts/api.ts';
import { endLooking } from './looking.ts';
import { tidyUploads } from './tidy.ts';
import { OffsetRefused, type Uploads, uploadsOf } from './uploads.ts';

const NAME = Type.Object({ clientId: CLIENT_ID });
const ANNOUNCED = Type.Object(
  { sha256: Type.String({ pattern: '^[0-9a-f]{64}$' }), bytes: Type.Integer({ minimum: 1 }) },
  { additionalProperties: false },
);
const OFFSET = Type.Object({ 'upload-offset': Type.Integer({ minimum: 0 }) });

const access = { who: 'machine' } as const;
const AS_BYTES = {
  code: 'not-bytes',
  message: 'The pieces of a session are sent as bytes (application/octet-stream).',
};
const URL = '/machine/uploads/:clientId';

interface Named {
  readonly Params: Static<typeof NAME>;
}

/** A student's machine sends sessions here; a cut costs nothing that had come before it. */
export function uploadRoutes(api: FastifyInstance, context: HubContext): void {
  const uploads = uploadsOf(context);
  api.addHook('onReady', () => tidyUploads(context));
  api.addHook('onClose', () => endLooking(context));
  announceRoutes(api, uploads);
  void api.register(async (raw) => bytesRoute(raw, uploads));
}

function announceRoutes(api: FastifyInstance, uploads: Uploads): void {
  api.put<Named & { Body: Static<typeof ANNOUNCED> }>(
    URL,
    { config: { access }, schema: { params: NAME, body: ANNOUNCED } },
    (request): Promise<UploadState> =>
      uploads.announce({ ...machineOf(request), ...request.params }, request.body),
  );
  api.get<Named>(
    URL,
    { config: { access }, schema: { params: NAME } },
    (request): Promise<UploadState> => uploads.state({ ...machineOf(request), ...request.params }),
  );
}

const machineOf = (request: Parameters<typeof machine>[0]): { studentId: string } => ({
  studentId: machine(request).studentId,
});

function bytesRoute(api: FastifyInstance, uploads: Uploads): void {
  api.removeAllContentTypeParsers();
  api.addContentTypeParser('application/octet-stream', (_request, payload, done) =>
    done(null, payload),
  );
  api.patch<Named & { Headers: Static<typeof OFFSET> }>(
    URL,
    { config: { access, sentAs: AS_BYTES }, schema: { params: NAME, headers: OFFSET } },
    async (request, reply) => {
      const { body, params, headers } = request;
      if (body === null || body === undefined) throw new Refused(400, 'empty', 'No data received.');
      const name = { ...machineOf(request), ...params };
      try {
        return await uploads.take(name, headers['upload-offset'], body as Readable);
      } catch (error) {
        if (!(error instanceof OffsetRefused)) throw error;
        const { code, message, state } = error;
        return reply.code(409).send({ error: { code, message }, ...state });
      }
    },
  );
}
