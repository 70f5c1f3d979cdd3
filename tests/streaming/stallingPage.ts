/** The true feed of the service and the true feed of the page, joined by a socket in memory, on one clock turned by hand. */
import fc from 'fast-check';
import { vi } from 'vitest';
import type { AnalysisOutput } from '../../src/analysis/contract.ts';
import { DEFAULT_PLAN, type Plan } from '../../src/coaching/plan.ts';
import { type PageSocket, follow } from '../../src/dashboard/feed/follow.ts';
import { type FeedState, NOTHING_YET } from '../../src/dashboard/feed/state.ts';
import { practiceHost } from '../../src/practice/host.ts';
import { livePractice } from '../../src/practice/livePractice.ts';
import { type Lens, type PageServer, attachFeed } from '../../src/streaming/feed.ts';

import { HandSource, scriptedChain } from '../practice/scripted.ts';

type Handler = (...args: unknown[]) => void;

/** What one end of a connection hears. */
function ears() {
  const handlers = new Map<string, Handler[]>();
  return {
    on: (name: string, handler: Handler) =>
      void handlers.set(name, [...(handlers.get(name) ?? []), handler]),
    hear: (name: string, ...args: unknown[]) => handlers.get(name)?.forEach((h) => h(...args)),
  };
}

/** A page that can stand still: what reaches it meanwhile, its own timers too, waits until it wakes. */
export function stallingThread() {
  let asleep = false;
  const waiting: (() => void)[] = [];
  const run = (task: () => void): void => void (asleep ? waiting.push(task) : task());
  const wake = (): void => {
    asleep = false;
    for (const task of waiting.splice(0)) run(task);
  };
  /** As a browser does: a timer that was due several times while the page slept fires once. */
  const every = (callback: () => void, ms: number): (() => void) => {
    let due = false;
    const timer = setInterval(() => {
      if (due) return;
      due = true;
      run(() => {
        due = false;
        callback();
      });
    }, ms);
    return () => clearInterval(timer);
  };
  return {
    run,
    every,
    wake,
    sleep: () => void (asleep = true),
    isAwake: () => !asleep,
    later: (callback: () => void, ms: number) => void setTimeout(() => run(callback), ms),
  };
}

/** The way there and back, ms; a message is copied as on a wire. */
const WAY_MS = 2;

export interface Joined {
  readonly source: HandSource;
  readonly practice: ReturnType<typeof livePractice>;
  readonly thread: ReturnType<typeof stallingThread>;
  readonly state: () => FeedState;
  /** Messages that reached the page, by name. */
  readonly got: Record<string, number>;
  /** The service sends nothing; its socket stays open. */
  freeze(): void;
  thaw(): void;
  end(): Promise<void>;
}

/** To be called with fake timers. @param onState hears each message as the page's sound does */
export function join(
  script: readonly (readonly [number, AnalysisOutput])[],
  onState: (state: FeedState) => void = () => undefined,
  { lens, plan = DEFAULT_PLAN }: { readonly lens?: Lens | undefined; readonly plan?: Plan } = {},
): Joined {
  const now = (): number => performance.now();
  const source = new HandSource();
  const practice = livePractice({
    practiceId: 'p1',
    source,
    chain: scriptedChain(script.map(([atS, output]) => ({ atS, output }))),
    settings: { hand: 'right', plan, emitFrames: true },
    now,
  });
  const thread = stallingThread();
  const server = ears();
  const page = ears();
  const got: Record<string, number> = {};
  let frozen = false;
  const toPage = (name: string, ...args: unknown[]): void => {
    if (frozen) return;
    const wire = JSON.stringify(args);
    setTimeout(
      () =>
        thread.run(() => {
          got[name] = (got[name] ?? 0) + 1;
          page.hear(name, ...(JSON.parse(wire) as unknown[]));
        }),
      WAY_MS,
    );
  };
  const socket = { data: {}, on: server.on, emit: toPage };
  const io = ears();
  const sockets = new Map<string, typeof socket>();
  const ioStandIn = {
    on: io.on,
    emit: toPage,
    sockets: { sockets },
  } as unknown as PageServer;
  const stopFeed = attachFeed(ioStandIn, practiceHost({ first: practice }), now, lens);
  let state = NOTHING_YET;
  const pageSocket = {
    active: true,
    on: page.on,
    emit: (name: string, ...args: unknown[]) =>
      void setTimeout(() => server.hear(name, ...args), WAY_MS),
    connect: () => undefined,
  } as unknown as PageSocket;
  const following = follow(
    pageSocket,
    { now, after: thread.later, every: thread.every },
    () => state,
    (next) => {
      state = next;
      onState(next);
    },
  );
  practice.start();
  sockets.set('one', socket);
  io.hear('connection', socket);
  const end = async (): Promise<void> => {
    following.stop();
    stopFeed();
    await practice.stop();
  };
  return {
    source,
    practice,
    thread,
    state: () => state,
    got,
    freeze: () => void (frozen = true),
    thaw: () => void (frozen = false),
    end,
  };
}

const STEP_MS = 200;

/** Promises settle at least this often, ms of the fake clock. */
const TURN_MS = 25;

const settle = async (): Promise<void> => {
  for (let i = 0; i < 4; i++) await Promise.resolve();
};

/** Turns the fake clock on. (Vitest's own asynchronous one waits a real moment for every timer.) */
export async function pass(ms: number): Promise<void> {
  for (let left = ms; left > 0; left -= TURN_MS) {
    vi.advanceTimersByTime(Math.min(left, TURN_MS));
    await settle();
  }
}

/** Lets time pass: packets come five times a second, and the page sleeps where it is told to. */
export async function play(
  { source, thread }: Joined,
  untilS: number,
  sleeps: readonly { readonly fromMs: number; readonly toMs: number }[],
): Promise<void> {
  for (let atMs = STEP_MS; atMs <= untilS * 1000; atMs += STEP_MS) {
    const sleeping = sleeps.some(({ fromMs, toMs }) => atMs >= fromMs && atMs < toMs);
    if (sleeping && thread.isAwake()) thread.sleep();
    if (!sleeping && !thread.isAwake()) {
      thread.wake();
      await settle();
    }
    source.packets(atMs / 1000, 1);
    await pass(STEP_MS);
  }
}

/** Times in which a page stands still for 0.1 to 5 s, all within `mostS`; ms. */
export const sleeps = (mostS: number): fc.Arbitrary<{ fromMs: number; toMs: number }[]> =>
  fc
    .array(
      fc.record({
        awakeMs: fc.integer({ min: 300, max: 6000 }),
        asleepMs: fc.integer({ min: 100, max: 5000 }),
      }),
      { minLength: 1, maxLength: 8 },
    )
    .map((pairs) => {
      let atMs = 0;
      return pairs
        .map(({ awakeMs, asleepMs }) => {
          const fromMs = atMs + awakeMs;
          atMs = fromMs + asleepMs;
          return { fromMs, toMs: atMs };
        })
        .filter(({ toMs }) => toMs < mostS * 1000);
    });
