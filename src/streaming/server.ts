import type { IncomingHttpHeaders } from 'node:http';
import type { FastifyInstance } from 'fastify';
import { Server, type Socket } from 'socket.io';
import type { PracticeHost } from '../practice/host.ts';
import {
  type Batcher,
  forgetWaiting,
  newBatcher,
  noteChange,
  takeBatch,
  waitMs,
} from './batcher.ts';
import { bound } from './bound.ts';
import { readCommand } from './command.ts';
import { type DeskService, attachDesk } from './desk.ts';
import {
  type ClientEvents,
  type CommandReply,
  MAX_COMMAND_BYTES,
  MAX_UNSEEN,
  type ServerEvents,
  type Snapshot,
} from './contract.ts';

interface PageState {
  /** Sequence that was last sent to it, and the one it has confirmed. */
  sent: number;
  seen: number;
  /** It was passed over: the next thing it gets is a snapshot. */
  behind: boolean;
}

type PageSocket = Socket<ClientEvents, ServerEvents, Record<string, never>, PageState>;
type PageServer = Server<ClientEvents, ServerEvents, Record<string, never>, PageState>;

function onCommand(host: PracticeHost, value: unknown, reply: unknown): void {
  const command = readCommand(value);
  const refusal = typeof command === 'string' ? command : host.obey(command);
  const answer: CommandReply = refusal === null ? { ok: true } : { ok: false, error: refusal };
  if (typeof reply === 'function') reply(answer);
}

function welcome(socket: PageSocket, host: PracticeHost, batcher: Batcher): void {
  socket.data = { sent: batcher.sequence, seen: batcher.sequence, behind: false };
  socket.on('command', (value: unknown, reply: unknown) => onCommand(host, value, reply));
  socket.on('seen', (sequence: unknown) => {
    if (Number.isSafeInteger(sequence)) socket.data.seen = Number(sequence);
  });
  socket.emit('snapshot', snapshot(host, batcher));
}

/** The newest points may come again in the next batch: a page takes only what is newer than its own. */
const snapshot = (host: PracticeHost, batcher: Batcher): Snapshot =>
  bound({ sequence: batcher.sequence, view: host.current().view() });

function sendTo(
  socket: PageSocket,
  batch: ReturnType<typeof takeBatch>,
  makeSnapshot: () => Snapshot,
): void {
  const state = socket.data;
  if (state.sent - state.seen >= MAX_UNSEEN) {
    state.behind = true;
    return;
  }
  if (state.behind) socket.emit('snapshot', makeSnapshot());
  else socket.emit('batch', batch);
  state.behind = false;
  state.sent = batch.sequence;
}

/** A page of another site may not listen in: its origin is another one. */
function isOwnPage({ origin, host }: IncomingHttpHeaders): boolean {
  return origin === undefined || (URL.canParse(origin) && new URL(origin).host === host);
}

/** Sends what waits, when it is due. */
function pump(io: PageServer, host: PracticeHost, batcher: Batcher, now: () => number) {
  let timer: NodeJS.Timeout | null = null;
  const flush = (): void => {
    timer = null;
    const batch = bound(takeBatch(batcher, host.current().view(), now()));
    let shared: Snapshot | null = null;
    const makeSnapshot = (): Snapshot => (shared ??= snapshot(host, batcher));
    for (const socket of io.sockets.sockets.values()) sendTo(socket, batch, makeSnapshot);
  };
  const arm = (): void => {
    const wait = waitMs(batcher, now());
    if (wait === null) return;
    if (timer !== null) clearTimeout(timer);
    timer = setTimeout(() => (waitMs(batcher, now()) === 0 ? flush() : arm()), wait);
  };
  return { arm, stop: () => timer !== null && clearTimeout(timer) };
}

/** A new practice: every page starts from its beginning. */
function showAnew(io: PageServer, host: PracticeHost, batcher: Batcher): void {
  forgetWaiting(batcher);
  for (const socket of io.sockets.sockets.values()) {
    socket.data.behind = false;
    socket.emit('snapshot', snapshot(host, batcher));
  }
}

/** Attaches the live stream of the practice under way to the server of `app`. */
export function attachStreaming(
  app: FastifyInstance,
  host: PracticeHost,
  now: () => number,
  desk: DeskService | null = null,
): void {
  const io: PageServer = new Server(app.server, {
    transports: ['websocket'],
    maxHttpBufferSize: MAX_COMMAND_BYTES,
    allowRequest: (request, answer) => answer(null, isOwnPage(request.headers)),
    serveClient: false,
  });
  const batcher = newBatcher();
  const pumped = pump(io, host, batcher, now);
  let phase = host.current().view().phase.phase;
  const changes = host.changes.subscribe((change) => {
    const next = host.current().view().phase.phase;
    noteChange(batcher, change, next !== phase);
    phase = next;
    pumped.arm();
  });
  const practices = host.practices.subscribe(() => showAnew(io, host, batcher));
  io.on('connection', (socket) => welcome(socket, host, batcher));
  const leaveDesk = desk ? attachDesk(io, desk) : () => undefined;
  app.addHook('preClose', async () => {
    changes.unsubscribe();
    practices.unsubscribe();
    leaveDesk();
    pumped.stop();
    io.disconnectSockets(true);
    // It waits for every request under way, as for a download that nobody takes.
    app.server.closeAllConnections();
    await io.close();
  });
}
