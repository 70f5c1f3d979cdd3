import type { Socket } from 'socket.io-client';
import type {
  Batch,
  ClientEvents,
  ServerEvents,
  ServiceClock,
  Snapshot,
} from '../../streaming/contract.ts';
import { interruptionOf } from './interruption.ts';
import { newLateness } from './lateness.ts';
import { mergeBatch } from './merge.ts';
import { LOOK_EVERY_MS, newSilence } from './silence.ts';
import type { Arrival, FeedState } from './state.ts';

export type PageSocket = Pick<
  Socket<ServerEvents, ClientEvents>,
  'on' | 'emit' | 'active' | 'connect'
>;

/** The page's own clock. */
export interface PageClock {
  /** Monotonic, ms. */
  now(): number;
  after(callback: () => void, ms: number): void;
  /** @returns what ends it */
  every(callback: () => void, ms: number): () => void;
}

export const AGAIN_MS = 300;

/** What the page had, with a snapshot in its place. */
function withSnapshot(
  before: FeedState,
  { view, service }: Snapshot,
  arrival: Arrival,
  lastService: string | null,
): FeedState {
  const restarted = lastService !== null && lastService !== service;
  const another = before.view !== null && before.view.practiceId !== view.practiceId;
  const interrupted = restarted && before.view !== null ? interruptionOf(before.view) : null;
  const stands = restarted || !another ? before.interrupted : null;
  return { connection: 'live', view, arrival, interrupted: interrupted ?? stands };
}

export interface Following {
  /** Page time at which the service was last heard, ms. */
  heardMs(): number;
  stop(): void;
}

/** Registers every handler once; a reconnect uses the same ones. */
export function follow(
  socket: PageSocket,
  clock: PageClock,
  get: () => FeedState,
  set: (state: FeedState) => void,
): Following {
  const lateness = newLateness();
  const silence = newSilence(clock.now());
  let service: string | null = null;
  let heardMs = clock.now();
  const hear = (): void => {
    heardMs = clock.now();
    silence.heard();
  };
  const arrived = (kind: Arrival['kind'], { atMs, sessionS }: ServiceClock): Arrival => {
    hear();
    return { kind, sessionS, lateMs: lateness.of(atMs, clock.now()) };
  };
  const change = (part: Partial<FeedState>): void => set({ ...get(), ...part });
  const lose = (): void => change({ connection: get().view === null ? 'connecting' : 'lost' });
  // Confirmed even where a listener fails: the service would wait for it for good.
  const confirming = (sequence: number, take: () => void): void => {
    try {
      take();
    } finally {
      socket.emit('seen', sequence);
    }
  };
  socket.on('connect', lateness.reset);
  socket.on('snapshot', (snapshot: Snapshot) => {
    const arrival = arrived('snapshot', snapshot.clock);
    const next = withSnapshot(get(), snapshot, arrival, service);
    service = snapshot.service;
    confirming(snapshot.sequence, () => set(next));
  });
  socket.on('batch', (batch: Batch) => {
    const arrival = arrived('batch', batch.clock);
    const { view } = get();
    const take = (): void =>
      view === null
        ? undefined
        : change({ connection: 'live', view: mergeBatch(view, batch), arrival });
    confirming(batch.sequence, take);
  });
  socket.on('alive', () => {
    hear();
    if (get().connection === 'lost') change({ connection: 'live' });
  });
  socket.on('disconnect', () => {
    lose();
    // A service that says goodbye is not asked again by itself; it may come back all the same.
    if (!socket.active) clock.after(() => socket.connect(), AGAIN_MS);
  });
  socket.on('connect_error', lose);
  const stop = clock.every(() => {
    if (silence.look(clock.now()) && get().connection === 'live') lose();
  }, LOOK_EVERY_MS);
  return { heardMs: () => heardMs, stop };
}
