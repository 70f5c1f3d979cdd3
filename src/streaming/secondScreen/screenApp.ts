import cookie from '@fastify/cookie';
import helmet from '@fastify/helmet';
import fastifyStatic from '@fastify/static';
import Fastify, { type FastifyInstance } from 'fastify';
import { Server } from 'socket.io';
import Type, { type Static } from 'typebox';
import type { PracticeHost } from '../../practice/host.ts';
import { Refused, answerErrors } from '../apiErrors.ts';
import { type PageServer, attachFeed, closeWith } from '../feed.ts';
import { PAGE_POLICY } from '../pagePolicy.ts';
import type { PairRefusal } from '../secondScreenContract.ts';
import { validateStrictly } from '../validation.ts';
import { LIVE_ONLY } from './liveOnly.ts';
import { isOwnHost, isOwnOrigin } from './own.ts';
import { WATCH_PAGE, pageFiles } from './pageFiles.ts';
import type { Screens } from './screens.ts';

export interface ScreenAppOptions {
  readonly host: PracticeHost;
  readonly now: () => number;
  /** Where the built pages are. */
  readonly folder: string;
  readonly screens: Screens;
  /** Tries a code that was typed at `address`. @returns the token of a screen that was let in */
  readonly pair: (digits: string, address: string) => { readonly token: string } | PairRefusal;
}

export interface ScreenApp {
  readonly app: FastifyInstance;
  /** Ends the sockets of one screen. */
  hangUp(id: string): void;
  isWatching(id: string): boolean;
}

const COOKIE = 'stillcatch-screen';
/** It only says what it has seen. */
const MAX_MESSAGE_BYTES = 1024;
/** A screen that does not answer for so long is hung up on, ms; one that only stood still for some seconds is not. */
const PING_EVERY_MS = 2000;
const PING_WAITS_MS = 6000;
/** Whoever else is in the network cannot keep the practice's own service busy with more. */
const MOST_CONNECTIONS = 40;
/** Nothing came, or it was hung up on and does not hang up itself: its place is free after so long, ms. */
const SILENT_MS = 10_000;
const HANGS_UP_MS = 2000;

const BODY = Type.Object(
  { code: Type.String({ minLength: 1, maxLength: 20 }) },
  { additionalProperties: false },
);

const REFUSALS: Readonly<Record<PairRefusal, Refused>> = {
  'wrong-code': new Refused(403, 'wrong-code', 'Wrong code. Enter the code that the laptop shows.'),
  'no-code': new Refused(409, 'no-code', 'No valid code. Get a new one on the laptop.'),
};

function refuseStrangers(app: FastifyInstance): void {
  app.addHook('onRequest', async ({ headers, raw, method }, reply) => {
    const own = isOwnHost(headers, raw.socket);
    if (own && (method === 'GET' || method === 'HEAD' || isOwnOrigin(headers, raw.socket))) return;
    await reply
      .code(own ? 403 : 421)
      .type('text/plain')
      .send('This address shows a practice to screens that open it by its own name only.');
  });
}

/** Once this side has ended a connection the other side cannot keep its place. */
function freePlaces(app: FastifyInstance): void {
  app.server.on('connection', (socket) => {
    socket.once('finish', () => setTimeout(() => socket.destroy(), HANGS_UP_MS).unref());
  });
}

/** The page and what it is made of, file by file: nothing else of the folder can be asked for. */
async function servePage(app: FastifyInstance, folder: string): Promise<void> {
  const files = pageFiles(folder);
  if (files === null) {
    app.get('/', (_request, reply) => reply.code(503).type('text/plain').send('Not built yet.'));
    return;
  }
  await app.register(fastifyStatic, { root: folder, serve: false });
  app.get('/', (_request, reply) => reply.sendFile(WATCH_PAGE, { maxAge: 0, immutable: false }));
  for (const file of files)
    app.get(`/${file}`, (_request, reply) =>
      reply.sendFile(file, { maxAge: '1y', immutable: true }),
    );
}

function pairRoutes(app: FastifyInstance, { screens, pair }: ScreenAppOptions): void {
  app.get('/pair', (request, reply) =>
    reply.code(screens.idOf(request.cookies[COOKIE]) === null ? 401 : 204).send(),
  );
  app.post<{ Body: Static<typeof BODY> }>(
    '/pair',
    { schema: { body: BODY }, bodyLimit: 200 },
    async ({ body, ip }, reply) => {
      const outcome = pair(body.code, ip);
      if (typeof outcome === 'string') throw REFUSALS[outcome];
      reply.setCookie(COOKIE, outcome.token, { httpOnly: true, sameSite: 'strict', path: '/' });
      return reply.code(204).send();
    },
  );
}

function attachScreens(app: FastifyInstance, options: ScreenAppOptions): PageServer {
  const { screens, host, now } = options;
  const screenOf = (header: string | undefined): string | null =>
    screens.idOf(app.parseCookie(header ?? '')[COOKIE]);
  const io: PageServer = new Server(app.server, {
    transports: ['websocket'],
    maxHttpBufferSize: MAX_MESSAGE_BYTES,
    pingInterval: PING_EVERY_MS,
    pingTimeout: PING_WAITS_MS,
    serveClient: false,
    allowRequest: ({ headers, socket }, answer) =>
      answer(
        null,
        isOwnHost(headers, socket) &&
          isOwnOrigin(headers, socket) &&
          screenOf(headers.cookie) !== null,
      ),
  });
  io.use((socket, next) => {
    const id = screenOf(socket.request.headers.cookie);
    if (id === null) return next(new Error('not paired'));
    void socket.join(id);
    next();
  });
  // It looks on: whatever else it asks for ends the connection.
  io.on('connection', (socket) => {
    socket.onAny((event) => event !== 'seen' && socket.disconnect(true));
  });
  closeWith(app, io, attachFeed(io, host, now, LIVE_ONLY));
  return io;
}

/** What other devices of the network reach: the page, pairing, and a view of the live practice. It does not listen. */
export async function buildScreenApp(options: ScreenAppOptions): Promise<ScreenApp> {
  const app = Fastify({
    forceCloseConnections: true,
    requestTimeout: SILENT_MS,
    connectionTimeout: SILENT_MS,
    keepAliveTimeout: SILENT_MS / 2,
  });
  validateStrictly(app);
  app.server.maxConnections = MOST_CONNECTIONS;
  freePlaces(app);
  refuseStrangers(app);
  await app.register(helmet, {
    contentSecurityPolicy: { useDefaults: false, directives: PAGE_POLICY },
    // Browsers take these two from secure addresses only, and complain about the others.
    crossOriginOpenerPolicy: false,
    originAgentCluster: false,
    strictTransportSecurity: false,
  });
  await app.register(cookie);
  answerErrors(app);
  await servePage(app, options.folder);
  pairRoutes(app, options);
  const io = attachScreens(app, options);
  return {
    app,
    hangUp: (id) => void io.in(id).disconnectSockets(true),
    isWatching: (id) => (io.sockets.adapter.rooms.get(id)?.size ?? 0) > 0,
  };
}
