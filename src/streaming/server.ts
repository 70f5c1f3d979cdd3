import type { FastifyInstance } from 'fastify';
import { Server } from 'socket.io';
import type { PracticeHost } from '../practice/host.ts';
import { readCommand } from './command.ts';
import { type CommandReply, MAX_COMMAND_BYTES } from './contract.ts';
import { type DeskService, attachDesk } from './desk.ts';
import { type PageServer, attachFeed, closeWith, isOwnPage } from './feed.ts';

function onCommand(host: PracticeHost, value: unknown, reply: unknown): void {
  const command = readCommand(value);
  const refusal = typeof command === 'string' ? command : host.obey(command);
  const answer: CommandReply = refusal === null ? { ok: true } : { ok: false, error: refusal };
  if (typeof reply === 'function') reply(answer);
}

export interface StreamingOptions {
  readonly desk?: DeskService;
  /** Told how many pages are connected, whenever that changes. */
  readonly onPages?: (open: number) => void;
}

/** Attaches the live stream of the practice under way to the server of `app`. */
export function attachStreaming(
  app: FastifyInstance,
  host: PracticeHost,
  now: () => number,
  { desk, onPages }: StreamingOptions = {},
): void {
  const io: PageServer = new Server(app.server, {
    transports: ['websocket'],
    maxHttpBufferSize: MAX_COMMAND_BYTES,
    allowRequest: (request, answer) => answer(null, isOwnPage(request.headers)),
    serveClient: false,
  });
  const stopFeed = attachFeed(io, host, now);
  const tellPages = (): void => onPages?.(io.sockets.sockets.size);
  io.on('connection', (socket) => {
    tellPages();
    socket.on('disconnect', tellPages);
    socket.on('command', (value: unknown, reply: unknown) => onCommand(host, value, reply));
  });
  const leaveDesk = desk ? attachDesk(io, desk) : () => undefined;
  closeWith(app, io, () => {
    stopFeed();
    leaveDesk();
  });
}
