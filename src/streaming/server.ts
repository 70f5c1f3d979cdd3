import type { IncomingHttpHeaders } from 'node:http';
import type { FastifyInstance } from 'fastify';
import { Server, type Socket } from 'socket.io';
import type { LivePractice } from '../practice/livePractice.ts';
import { type Batcher, newBatcher, noteChange, takeBatch, waitMs } from './batcher.ts';
import { bound } from './bound.ts';
import { readCommand } from './command.ts';
import { type DeskService, attachDesk } from './desk.ts';
import {
  type ClientEvents,
  type Command,
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

const replyIf = (done: boolean, error: string): CommandReply =>
  done ? { ok: true } : { ok: false, error };

function obey(practice: LivePractice, command: Command): CommandReply {
  switch (command.type) {
    case 'acknowledge':
      return replyIf(practice.acknowledge(command.id), 'That warning does not stand any more.');
    case 'correct':
      return replyIf(
        practice.correct(command.index, command.kind),
        `There is no repetition ${command.index} in this session.`,
      );
    case 'undo':
      return replyIf(practice.undo(), 'There is no correction to take back.');
    case 'pause':
    case 'resume':
      practice.mark({ type: command.type, value: null });
      return { ok: true };
  }
}

function onCommand(practice: LivePractice, value: unknown, reply: unknown): void {
  const command = readCommand(value);
  const answer: CommandReply =
    typeof command === 'string' ? { ok: false, error: command } : obey(practice, command);
  if (typeof reply === 'function') reply(answer);
}

function welcome(socket: PageSocket, practice: LivePractice, batcher: Batcher): void {
  socket.data = { sent: batcher.sequence, seen: batcher.sequence, behind: false };
  socket.on('command', (value: unknown, reply: unknown) => onCommand(practice, value, reply));
  socket.on('seen', (sequence: unknown) => {
    if (Number.isSafeInteger(sequence)) socket.data.seen = Number(sequence);
  });
  socket.emit('snapshot', snapshot(practice, batcher));
}

/** The newest points may come again in the next batch: a page takes only what is newer than its own. */
const snapshot = (practice: LivePractice, batcher: Batcher): Snapshot =>
  bound({ sequence: batcher.sequence, view: practice.view() });

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
function pump(io: PageServer, practice: LivePractice, batcher: Batcher, now: () => number) {
  let timer: NodeJS.Timeout | null = null;
  const flush = (): void => {
    timer = null;
    const batch = bound(takeBatch(batcher, practice.view(), now()));
    let shared: Snapshot | null = null;
    const makeSnapshot = (): Snapshot => (shared ??= snapshot(practice, batcher));
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

/** Attaches the live stream of `practice` to the server of `app`. */
export function attachStreaming(
  app: FastifyInstance,
  practice: LivePractice,
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
  const pumped = pump(io, practice, batcher, now);
  let phase = practice.view().phase.phase;
  const changes = practice.changes.subscribe((change) => {
    const next = practice.view().phase.phase;
    noteChange(batcher, change, next !== phase);
    phase = next;
    pumped.arm();
  });
  io.on('connection', (socket) => welcome(socket, practice, batcher));
  const leaveDesk = desk ? attachDesk(io, desk) : () => undefined;
  app.addHook('preClose', async () => {
    changes.unsubscribe();
    leaveDesk();
    pumped.stop();
    io.disconnectSockets(true);
    await io.close();
  });
}
