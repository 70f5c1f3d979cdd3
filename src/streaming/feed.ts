import type { IncomingHttpHeaders } from 'node:http';
import type { FastifyInstance } from 'fastify';
import type { Server, Socket } from 'socket.io';
import { emptyCurve } from '../practice/curve.ts';
import type { PracticeHost } from '../practice/host.ts';
import type { PracticeChange } from '../practice/livePractice.ts';
import type { Section } from '../practice/reduce.ts';
import {
  type Batcher,
  forgetWaiting,
  newBatcher,
  noteChange,
  takeBatch,
  waitMs,
} from './batcher.ts';
import { bound } from './bound.ts';
import {
  type ClientEvents,
  MAX_UNSEEN,
  type PracticeView,
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
export type PageServer = Server<ClientEvents, ServerEvents, Record<string, never>, PageState>;

/** What of a practice goes to a page. */
export interface Lens {
  /** Sections that are news to it; `null`: all of them. */
  readonly sections: ReadonlySet<Section> | null;
  readonly show: (view: PracticeView) => PracticeView;
}

const WHOLE: Lens = { sections: null, show: (view) => view };

interface Feed {
  readonly io: PageServer;
  readonly host: PracticeHost;
  readonly lens: Lens;
  readonly batcher: Batcher;
}

/** The newest points may come again in the next batch: a page takes only what is newer than its own. */
const snapshot = ({ host, batcher, lens }: Feed): Snapshot =>
  bound({ sequence: batcher.sequence, view: lens.show(host.current().view()) });

function welcome(feed: Feed, socket: PageSocket): void {
  const { sequence } = feed.batcher;
  socket.data = { sent: sequence, seen: sequence, behind: false };
  socket.on('seen', (seen: unknown) => {
    if (Number.isSafeInteger(seen)) socket.data.seen = Number(seen);
  });
  socket.emit('snapshot', snapshot(feed));
}

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

/** Sends what waits, when it is due. */
function pump(feed: Feed, now: () => number) {
  const { io, host, lens, batcher } = feed;
  let timer: NodeJS.Timeout | null = null;
  const flush = (): void => {
    timer = null;
    const batch = bound(takeBatch(batcher, lens.show(host.current().view()), now()));
    let shared: Snapshot | null = null;
    const makeSnapshot = (): Snapshot => (shared ??= snapshot(feed));
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
function showAnew(feed: Feed): void {
  forgetWaiting(feed.batcher);
  for (const socket of feed.io.sockets.sockets.values()) {
    socket.data.behind = false;
    socket.emit('snapshot', snapshot(feed));
  }
}

/** The part of a change that a page hears of. */
function narrowed({ sections }: Lens, change: PracticeChange): PracticeChange {
  if (sections === null) return change;
  const points = sections.has('curve') ? change.points : emptyCurve();
  const wanted = [...change.sections].filter((section) => sections.has(section));
  return { ...change, sections: new Set(wanted), points };
}

/** Feeds every page of `io` with the practice under way. @returns what to call at the end */
export function attachFeed(
  io: PageServer,
  host: PracticeHost,
  now: () => number,
  lens: Lens = WHOLE,
): () => void {
  const feed: Feed = { io, host, lens, batcher: newBatcher() };
  const pumped = pump(feed, now);
  let phase = host.current().view().phase.phase;
  const changes = host.changes.subscribe((change) => {
    const next = host.current().view().phase.phase;
    noteChange(feed.batcher, narrowed(lens, change), next !== phase);
    phase = next;
    pumped.arm();
  });
  const practices = host.practices.subscribe(() => showAnew(feed));
  io.on('connection', (socket) => welcome(feed, socket));
  return () => {
    changes.unsubscribe();
    practices.unsubscribe();
    pumped.stop();
  };
}

/** A page of another site may not listen in: its origin is another one. */
export function isOwnPage({ origin, host }: IncomingHttpHeaders): boolean {
  return origin === undefined || (URL.canParse(origin) && new URL(origin).host === host);
}

/** Ends every socket together with the service of `app`. */
export function closeWith(app: FastifyInstance, io: PageServer, stop: () => void): void {
  app.addHook('preClose', async () => {
    stop();
    io.disconnectSockets(true);
    // It waits for every request under way, as for a download that nobody takes.
    app.server.closeAllConnections();
    await io.close();
  });
}
