import { join } from 'node:path';
import type { Readable } from 'node:stream';
import type { FastifyInstance } from 'fastify';
import Type, { type Static } from 'typebox';
import { readAnalysis } from '../sessions/derivatives.ts';
import type { SessionSummary, StoredSession } from '../sessions/store/rows.ts';
import type { SessionStore } from '../sessions/store/store.ts';
import { AS_ZIP, Refused, answerErrors, refuseOtherSites } from './apiErrors.ts';
import { notesRoute } from './sessionNotesApi.ts';
import { reviewCache } from './reviewCache.ts';
import { type Reviewed, withSession } from './reviewing.ts';
import { type Reviews, sessionReviews } from './sessionReviews.ts';
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
import { type Exported, download, packedZip } from './sessionsExport.ts';
import { inScratch, receive, tooLarge } from './sessionsImport.ts';
import { progressView, summaryView, weekRepetitions } from './sessionsViews.ts';

export interface KeptSessions {
  /** `null` where nothing can be kept; `problem` says why. */
  readonly store: SessionStore | null;
  /** One sentence, or `null`. */
  readonly problem: string | null;
  readonly folder: string;
  /** Has each session's id told once it is kept whole. */
  readonly onSaved?: (hear: (id: string) => void) => void;
  /** Told once the notes of a session were edited. */
  readonly edited?: (session: SessionSummary) => void;
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
    throw new Refused(503, 'not-kept', kept.problem ?? 'Practices are not being saved now.');
  };
  const { root } = kept.store?.places ?? { root: null };
  const cache = root === null ? null : reviewCache(join(root, 'cache'));
  const shelf: Shelf = { store, reviews: sessionReviews(cache) };
  app.addHook('onClose', shelf.reviews.close);
  kept.onSaved?.((id) => prepare(shelf, id));
  void app.register(
    async (api) => {
      answerErrors(api);
      api.addHook('onRequest', refuseOtherSites);
      listRoutes(api, shelf, kept.folder);
      sessionRoutes(api, shelf);
      changeRoutes(api, shelf);
      notesRoute(api, store, kept.edited);
      importRoute(api, shelf);
    },
    { prefix: '/api' },
  );
}

/** Whoever looks at the list will open one of these. */
const PREPARED = 2;

function prepareNewest({ store, reviews }: Shelf, sessions: readonly SessionSummary[]): void {
  const ready = sessions.filter((s) => s.analysed && s.state !== 'running').slice(0, PREPARED);
  for (const { id, plan } of ready)
    void reviews.prepare({ id, folder: store().folderOf(id), plan });
}

function listRoutes(api: FastifyInstance, shelf: Shelf, folder: string): void {
  const { store } = shelf;
  api.get<{ Querystring: Static<typeof LIST> }>(
    '/sessions',
    { schema: { querystring: LIST } },
    async ({ query }): Promise<SessionList> => {
      const deleted = query.deleted ?? false;
      const sessions = await store().list({ deleted });
      if (!deleted) prepareNewest(shelf, sessions);
      return { sessions: sessions.map(summaryView), folder };
    },
  );
  api.get('/progress', async (): Promise<Progress> => progressView(await store().list()));
}

async function existing(store: SessionStore, sessionId: string): Promise<StoredSession> {
  const session = await store.get(sessionId);
  if (session === null || session.deleted)
    throw new Refused(404, 'not-found', 'Session not found.');
  return session;
}

/** A session that is there and has come to its end. */
async function reviewed({ store }: Shelf, sessionId: string): Promise<Reviewed> {
  const session = await existing(store(), sessionId);
  refuseRecording(session);
  return { id: sessionId, folder: store().folderOf(sessionId), plan: session.plan };
}

/** In the background: whoever has practised or imported will look at it. */
function prepare(shelf: Shelf, sessionId: string): void {
  reviewed(shelf, sessionId).then(shelf.reviews.prepare, () => undefined);
}

function refuseRecording({ state }: StoredSession): void {
  if (state === 'running')
    throw new Refused(409, 'recording', 'This session is being recorded. End the practice first.');
}

/** The result, `null` where it cannot be had (the summary says why), and what pain was told to be like. */
async function readOf(
  shelf: Shelf,
  session: StoredSession,
): Promise<Pick<SessionDetail, 'analysis' | 'painSigns'>> {
  if (!session.analysed) return { analysis: null };
  const folder = shelf.store().folderOf(session.id);
  const { kept, told } = await withSession(folder, async ({ files, events }) => ({
    kept: await readAnalysis(files),
    told: events.flatMap(({ signs }) => signs ?? []),
  }));
  return {
    analysis: kept ?? (await shelf.reviews.analysis(await reviewed(shelf, session.id))),
    painSigns: [...new Set(told)],
  };
}

function sessionRoutes(api: FastifyInstance, shelf: Shelf): void {
  api.get<{ Params: Static<typeof ID> }>(
    '/sessions/:id',
    { schema: { params: ID } },
    async ({ params }): Promise<SessionDetail> => {
      const session = await existing(shelf.store(), params.id);
      const { plan, note, painBefore, painAfter } = session;
      return {
        summary: summaryView(session),
        plan,
        ...(await readOf(shelf, session)),
        notes: { note, painBefore, painAfter },
        ...(summaryView(session).notCounted === null && {
          weekRepetitions: weekRepetitions(await shelf.store().list(), session),
        }),
      };
    },
  );
  api.get<{ Params: Static<typeof ID_INDEX> }>(
    '/sessions/:id/curves/:index',
    { schema: { params: ID_INDEX } },
    async ({ params }): Promise<RepetitionCurves> => {
      const session = await reviewed(shelf, params.id);
      const found = await shelf.reviews.curves(session, params.index);
      if (found !== null) return found;
      throw new Refused(404, 'not-found', `This session has no repetition ${params.index}.`);
    },
  );
  api.get<{ Params: Static<typeof ID> }>(
    '/sessions/:id/overview',
    { schema: { params: ID } },
    async ({ params }): Promise<SessionOverview> =>
      shelf.reviews.overview(await reviewed(shelf, params.id)),
  );
  api.get<{ Params: Static<typeof ID_FORMAT> }>(
    '/sessions/:id/export/:format',
    { schema: { params: ID_FORMAT } },
    async ({ params }, reply) => {
      const session = await existing(shelf.store(), params.id);
      refuseRecording(session);
      const file = await download(exported(shelf, params.id), params.format, async () => {
        const analysis = (await readOf(shelf, session)).analysis;
        return analysis ?? shelf.reviews.analysis(await reviewed(shelf, params.id));
      });
      return reply
        .type(file.type)
        .header('content-disposition', `attachment; filename="${file.fileName}"`)
        .send(file.body);
    },
  );
}

const exported = ({ store }: Shelf, sessionId: string): Exported => ({
  id: sessionId,
  path: store().folderOf(sessionId),
  zip: () => packedZip(store(), sessionId),
});

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

function importRoute(api: FastifyInstance, all: Shelf): void {
  const { store } = all;
  api.removeAllContentTypeParsers();
  api.addContentTypeParser(ZIP_TYPES, (_request, payload, done) => done(null, payload));
  api.post('/import', { config: { sentAs: AS_ZIP } }, async (request, reply): Promise<Imported> => {
    const shelf = store();
    if (Number(request.headers['content-length'] ?? 0) > MAX_IMPORT_BYTES) throw tooLarge();
    if (request.body === undefined || request.body === null)
      throw new Refused(400, 'empty', 'No file received.');
    const imported = await inScratch('session.zip', async (path) => {
      await receive(request.body as Readable, path);
      return shelf.importSession(path);
    });
    prepare(all, imported);
    reply.code(201);
    return { id: imported };
  });
}
