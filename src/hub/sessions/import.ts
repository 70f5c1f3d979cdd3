import { rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { Readable } from 'node:stream';
import type { FastifyInstance } from 'fastify';
import { AS_ZIP, Refused } from '../../streaming/apiErrors.ts';
import { MAX_UPLOAD_BYTES } from '../../streaming/hubContract/machine.ts';
import type { Imported } from '../../streaming/sessionsContract.ts';
import { receive, tooLarge } from '../../streaming/sessionsImport.ts';
import { newId } from '../access/secrets.ts';
import type { HubContext } from '../context.ts';
import { config, one, typed } from '../parts/api.ts';
import { sha256Of } from '../uploads/staging.ts';
import { takeIn } from '../uploads/takeIn.ts';

const ZIP_TYPES = ['application/zip', 'application/x-zip-compressed', 'application/octet-stream'];

/** A zip that a student sent by mail. */
export function importRoute(api: FastifyInstance, context: HubContext): void {
  void api.register(async (raw) => {
    raw.removeAllContentTypeParsers();
    raw.addContentTypeParser(ZIP_TYPES, (_request, payload, done) => done(null, payload));
    typed(raw).post(
      '/students/:studentId/import',
      {
        config: { ...config({ who: 'coach-of', of: 'student' }), sentAs: AS_ZIP },
        schema: { params: one('student') },
      },
      async (request, reply): Promise<Imported> => {
        if (Number(request.headers['content-length'] ?? 0) > MAX_UPLOAD_BYTES)
          throw tooLarge(MAX_UPLOAD_BYTES);
        const body = request.body as Readable | null | undefined;
        if (body === null || body === undefined)
          throw new Refused(400, 'empty', 'No file received.');
        reply.code(201);
        return { id: await take(context, request.params.studentId!, body) };
      },
    );
  });
}

async function take(context: HubContext, studentId: string, body: Readable): Promise<string> {
  const path = join(context.places.uploads, `import-${newId()}.part`);
  try {
    await receive(body, path, MAX_UPLOAD_BYTES);
    const { size: bytes } = await stat(path);
    const sha256 = await sha256Of(path);
    const taken = await takeIn(context, { studentId, clientId: null, sha256, bytes, path });
    if (taken.sameAs === null) return taken.sessionId;
    throw new Refused(409, 'exists', 'This session is already here.');
  } finally {
    await rm(path, { force: true });
  }
}
