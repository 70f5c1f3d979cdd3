import type { Readable } from 'node:stream';
import type { FastifyInstance } from 'fastify';
import Type, { type Static } from 'typebox';
import type { AnalysisResult } from '../analysis/result.ts';
import { readAnalysis } from '../sessions/derivatives.ts';
import type { StoredSession } from '../sessions/store/rows.ts';
import type { SessionStore } from '../sessions/store/store.ts';
import { Refused, answerErrors, refuseOtherSites } from './apiErrors.ts';
import { overviewOf } from './reviewCurves.ts';
import { type Review, type Reviews, sessionReviews, withSession } from './sessionReviews.ts';
import {
  EXPORTS,
  type Imported,
  MAX_IMPORT_BYTES,
  type Progress,
  type RepetitionCurves,
  type SessionDetail,
  type SessionList,
  type SessionOverview,
} from './sessionsContract.ts';
import { download } from './sessionsExport.ts';
import { TOO_LARGE, inScratch, receive } from './sessionsImport.ts';
import { progressView, summaryView } from './sessionsViews.ts';

export interface KeptSessions {
  /** `null` where nothing can be kept; `problem` says why. */
  readonly store: SessionStore | null;
  /** One sentence, or `null`. */
  readonly problem: string | null;
  readonly folder: string;
}

const id = Type.String({ pattern: '^[A-Za-z0-9]{1,64}$' });
const ID = Type.Object({ id });
const ID_INDEX = Type.Object({ id, index: Type.Integer({ minimum: 1, maximum: 1e6 }) });
const ID_FORMAT = Type.Object({
  id,
  format: Type.Union(EXPORTS.map((format) => Type.Literal(format))),
});
const LIST = Type.Object({ deleted: Type.Optional(Type.Boolean()) });

interface Shelf {
  readonly store: () => SessionStore;
  readonly reviews: Reviews;
}

/** Serves the kept sessions under /api. */
export function registerSessionsApi(app: FastifyInstance, kept: KeptSessions): void {
  const store = (): SessionStore => {
    if (kept.store !== null) return kept.store;
    throw new Refused(503, 'not-kept', kept.problem ?? 'Practices are not kept now.');
  };
  const shelf: Shelf = { store, reviews: sessionReviews() };
  void app.register(
    async (api) => {
      answerErrors(api);
      api.addHook('onRequest', refuseOtherSites);
      listRoutes(api, shelf, kept.folder);
      sessionRoutes(api, shelf);
      changeRoutes(api, shelf);
      importRoute(api, shelf);
    },
    { prefix: '/api' },
  );
}

function listRoutes(api: FastifyInstance, { store }: Shelf, folder: string): void {
  api.get<{ Querystring: Static<typeof LIST> }>(
    '/sessions',
    { schema: { querystring: LIST } },
    async ({ query }): Promise<SessionList> => {
      const sessions = await store().list({ deleted: query.deleted ?? false });
      return { sessions: sessions.map(summaryView), folder };
    },
  );
  api.get('/progress', async (): Promise<Progress> => progressView(await store().list()));
}

async function existing(store: SessionStore, sessionId: string): Promise<StoredSession> {
  const session = await store.get(sessionId);
  if (session === null || session.deleted)
    throw new Refused(404, 'not-found', 'There is no such session.');
  return session;
}

/** Of a session that is there and has come to its end. */
async function reviewOf({ store, reviews }: Shelf, sessionId: string): Promise<Review> {
  const session = await existing(store(), sessionId);
  refuseRecording(session);
  return reviews.of(sessionId, store().folderOf(sessionId), session.plan);
}

function refuseRecording({ state }: StoredSession): void {
  if (state === 'running')
    throw new Refused(409, 'recording', 'The session is being recorded; end the practice first.');
}

/** `null` where it cannot be had: the summary says why. */
async function analysisOf(shelf: Shelf, session: StoredSession): Promise<AnalysisResult | null> {
  if (!session.analysed) return null;
  const folder = shelf.store().folderOf(session.id);
  const kept = await withSession(folder, ({ files }) => readAnalysis(files));
  return kept ?? (await reviewOf(shelf, session.id)).analysis;
}

function sessionRoutes(api: FastifyInstance, shelf: Shelf): void {
  api.get<{ Params: Static<typeof ID> }>(
    '/sessions/:id',
    { schema: { params: ID } },
    async ({ params }): Promise<SessionDetail> => {
      const session = await existing(shelf.store(), params.id);
      const { plan, note, painBefore, painAfter } = session;
      const analysis = await analysisOf(shelf, session);
      return {
        summary: summaryView(session),
        plan,
        analysis,
        notes: { note, painBefore, painAfter },
      };
    },
  );
  api.get<{ Params: Static<typeof ID_INDEX> }>(
    '/sessions/:id/curves/:index',
    { schema: { params: ID_INDEX } },
    async ({ params }): Promise<RepetitionCurves> => {
      const { curves } = await reviewOf(shelf, params.id);
      const found = curves.find((c) => c.index === params.index);
      if (found !== undefined) return found;
      throw new Refused(404, 'not-found', `The session has no repetition ${params.index}.`);
    },
  );
  api.get<{ Params: Static<typeof ID> }>(
    '/sessions/:id/overview',
    { schema: { params: ID } },
    async ({ params }): Promise<SessionOverview> => overview(await reviewOf(shelf, params.id)),
  );
  api.get<{ Params: Static<typeof ID_FORMAT> }>(
    '/sessions/:id/export/:format',
    { schema: { params: ID_FORMAT } },
    async ({ params }, reply) => {
      const session = await existing(shelf.store(), params.id);
      refuseRecording(session);
      const file = await download(shelf.store(), params.id, params.format, async () => {
        const analysis = await analysisOf(shelf, session);
        return analysis ?? (await reviewOf(shelf, params.id)).analysis;
      });
      return reply
        .type(file.type)
        .header('content-disposition', `attachment; filename="${file.fileName}"`)
        .send(file.body);
    },
  );
}

function overview({ analysis, curves }: Review): SessionOverview {
  const passed = new Map(
    analysis.repetitions.map((r) => [r.index, r.kind === 'rehearsal' ? r.verdict.passed : null]),
  );
  return { repetitions: curves.map((c) => overviewOf(c, passed.get(c.index) ?? null)) };
}

function changeRoutes(api: FastifyInstance, { store, reviews }: Shelf): void {
  api.delete<{ Params: Static<typeof ID> }>(
    '/sessions/:id',
    { schema: { params: ID } },
    async ({ params }, reply) => {
      await store().remove(params.id);
      reviews.forget(params.id);
      return reply.code(204).send();
    },
  );
  api.post<{ Params: Static<typeof ID> }>(
    '/sessions/:id/restore',
    { schema: { params: ID } },
    async ({ params }, reply) => {
      await store().restore(params.id);
      return reply.code(204).send();
    },
  );
}

const ZIP_TYPES = ['application/zip', 'application/x-zip-compressed', 'application/octet-stream'];

function importRoute(api: FastifyInstance, { store }: Shelf): void {
  api.removeAllContentTypeParsers();
  api.addContentTypeParser(ZIP_TYPES, (_request, payload, done) => done(null, payload));
  api.post('/import', async (request, reply): Promise<Imported> => {
    const shelf = store();
    if (Number(request.headers['content-length'] ?? 0) > MAX_IMPORT_BYTES) throw TOO_LARGE;
    if (request.body === undefined || request.body === null)
      throw new Refused(400, 'empty', 'No file was sent.');
    const imported = await inScratch('session.zip', async (path) => {
      await receive(request.body as Readable, path);
      return shelf.importSession(path);
    });
    reply.code(201);
    return { id: imported };
  });
}
