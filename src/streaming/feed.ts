import { randomUUID } from 'node:crypto';
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
  isTooLong,
  newBatcher,
  noteChange,
  takeBatch,
  waitMs,
} from './batcher.ts';
import { bound } from './bound.ts';
import { isLoopbackHost } from './ownNames.ts';
import {
  ALIVE_EVERY_MS,
  type Batch,
  type ClientEvents,
  MAX_UNSEEN,
  type PracticeView,
  type ServerEvents,
  type ServiceClock,
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
  /** Monotonic, ms. */
  readonly now: () => number;
  readonly service: string;
}

const clockOf = ({ host, now }: Feed): ServiceClock => ({
  atMs: now(),
  sessionS: host.current().sessionS(),
});

const viewOf = ({ host, lens }: Feed): PracticeView => lens.show(host.current().view());

/** The newest points may come again in the next batch: a page takes only what is newer than its own. */
const snapshot = (feed: Feed): Snapshot =>
  bound({
    sequence: feed.batcher.sequence,
    clock: clockOf(feed),
    service: feed.service,
    view: viewOf(feed),
  });

/** Whatever it missed, it has everything now; only this message is on its way to it. */
function catchUp(socket: PageSocket, whole: Snapshot): void {
  socket.data = { sent: whole.sequence, seen: whole.sequence - 1, behind: false };
  socket.emit('snapshot', whole);
}

/** The page says how far it is. What was never sent to it, or lies behind, is no news of it. */
function confirm(feed: Feed, socket: PageSocket, seen: unknown): void {
  const state = socket.data;
  if (!Number.isSafeInteger(seen)) return;
  const sequence = Number(seen);
  if (sequence <= state.seen || sequence > state.sent) return;
  state.seen = sequence;
  if (state.behind && state.seen === state.sent) catchUp(socket, snapshot(feed));
}

function welcome(feed: Feed, socket: PageSocket): void {
  socket.on('seen', (seen: unknown) => confirm(feed, socket, seen));
  catchUp(socket, snapshot(feed));
}

function sendTo(socket: PageSocket, batch: Batch): void {
  const state = socket.data;
  state.behind ||= state.sent - state.seen >= MAX_UNSEEN;
  if (state.behind) return;
  socket.emit('batch', batch);
  state.sent = batch.sequence;
}

const socketsOf = ({ io }: Feed): Iterable<PageSocket> => io.sockets.sockets.values();

/** Sends what waits to every page that keeps up. */
function flush(feed: Feed): void {
  const tooLong = isTooLong(feed.batcher);
  const batch = bound(takeBatch(feed.batcher, viewOf(feed), clockOf(feed)));
  if (!tooLong) {
    for (const socket of socketsOf(feed)) sendTo(socket, batch);
    return;
  }
  const whole = snapshot(feed);
  for (const socket of socketsOf(feed)) if (!socket.data.behind) catchUp(socket, whole);
}

/** Flushes what waits when it is due. */
function pump(feed: Feed) {
  const { batcher, now } = feed;
  let timer: NodeJS.Timeout | null = null;
  const fire = (): void => {
    timer = null;
    if (waitMs(batcher, now()) === 0) flush(feed);
    else arm();
  };
  const arm = (): void => {
    const wait = waitMs(batcher, now());
    if (wait === null) return;
    if (timer !== null) clearTimeout(timer);
    timer = setTimeout(fire, wait);
  };
  return { arm, stop: () => timer !== null && clearTimeout(timer) };
}

/** A new practice: every page starts from its beginning. */
function showAnew(feed: Feed): void {
  forgetWaiting(feed.batcher);
  const whole = snapshot(feed);
  for (const socket of socketsOf(feed)) catchUp(socket, whole);
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
  const feed: Feed = { io, host, lens, now, batcher: newBatcher(), service: randomUUID() };
  const pumped = pump(feed);
  const beat = setInterval(() => io.emit('alive'), ALIVE_EVERY_MS);
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
    clearInterval(beat);
  };
}

/** A page of another site may not listen in: its origin is another one, or its name merely points here. */
export function isOwnPage({ origin, host }: IncomingHttpHeaders): boolean {
  if (!isLoopbackHost(host)) return false;
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
