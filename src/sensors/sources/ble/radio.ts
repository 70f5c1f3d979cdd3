import type { LinkState } from '../source.ts';
import type { DriverKind, StreamSetup } from './drivers/driver.ts';
import type { FromRadio, Wish } from './messages.ts';
import { type RadioProblem, radioProblem } from './problem.ts';
import { RadioProcess, type RadioProcessOptions } from './radioProcess.ts';

/** A sensor that advertises. */
export interface SeenSensor {
  readonly id: string;
  readonly name: string;
  readonly driver: DriverKind;
  readonly rssiDbm: number;
  /** Of the shared monotonic clock. */
  readonly seenMs: number;
}

/** A sensor that somebody wants. */
export interface LinkStatus {
  readonly wish: Wish;
  readonly state: LinkState;
  readonly reason: string | null;
  readonly retryInMs: number | null;
  readonly batteryPct: number | null;
  readonly rssiDbm: number | null;
  /** Of the present or last connection; `null` before the first. */
  readonly setup: StreamSetup | null;
}

export interface RadioStatus {
  /** Why no sensor can be reached at all; `null` where all is well or not known yet. */
  readonly problem: RadioProblem | null;
  readonly ready: boolean;
  /** Sensors that nobody asked for are looked for. */
  readonly browsing: boolean;
  readonly recording: boolean;
  readonly seen: readonly SeenSensor[];
  readonly links: readonly LinkStatus[];
}

export interface RadioListener {
  /** Adapter, seen sensors or a link changed. */
  changed?(status: RadioStatus): void;
  link?(link: LinkStatus): void;
  /** A new connection: what its packets mean. */
  setup?(id: string, setup: StreamSetup): void;
  packet?(id: string, atMs: number, bytes: Uint8Array): void;
  /** A device answered a question that left at `sentMs`. */
  clock?(id: string, sentMs: number, ticks: number): void;
}

const FORGET_SEEN_MS = 10_000;
/** Problems that may go away by themselves are looked at again. */
const LOOK_AGAIN_MS = 10_000;
const MAY_MEND: ReadonlySet<string> = new Set(['no-adapter', 'no-answer', 'in-use']);

/** The service's side of Bluetooth: what is seen, what is wanted, how the links do. Lives as long as the service. */
export class Radio {
  readonly #process: RadioProcess;
  readonly #listeners = new Set<RadioListener>();
  readonly #holds = new Map<symbol, readonly Wish[]>();
  readonly #seen = new Map<string, SeenSensor>();
  readonly #links = new Map<string, LinkStatus>();
  /** Of open links, for a process that dies. */
  readonly #handles = new Map<string, number>();
  readonly #now: () => number;
  #problem: RadioProblem | null = null;
  #ready = false;
  #browsing = false;
  #recordings = 0;
  #lookAgain: NodeJS.Timeout | null = null;

  constructor(now: () => number, options: RadioProcessOptions = {}) {
    this.#now = now;
    this.#process = new RadioProcess(
      {
        started: () => this.#onStarted(),
        message: (message) => this.#take(message),
        crashed: (detail) => this.#onCrash(detail),
      },
      options,
    );
  }

  get status(): RadioStatus {
    return {
      problem: this.#problem,
      ready: this.#ready,
      browsing: this.#browsing,
      recording: this.#recordings > 0,
      seen: [...this.#seen.values()].filter((s) => this.#now() - s.seenMs < FORGET_SEEN_MS),
      links: [...this.#links.values()],
    };
  }

  /** Of the radio's process; `null` while there is none. */
  get pid(): number | null {
    return this.#process.pid;
  }

  listen(listener: RadioListener): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Keeps these sensors connected until released. @returns the release */
  hold(wishes: readonly Wish[]): () => void {
    const key = Symbol();
    this.#holds.set(key, wishes);
    this.#process.start();
    this.#tellWishes();
    return () => {
      this.#holds.delete(key);
      this.#tellWishes();
    };
  }

  /** Looks for sensors. Refused while a recording runs: scanning takes air time from the links. */
  browse(on: boolean): boolean {
    if (on && this.#recordings > 0) return false;
    this.#browsing = on;
    if (on) this.#process.start();
    this.#process.send({ type: 'scan', on });
    return true;
  }

  /** A recording begins. @returns what to call at its end */
  beginRecording(): () => void {
    this.browse(false);
    this.#recordings += 1;
    let running = true;
    return () => {
      if (running) this.#recordings -= 1;
      running = false;
    };
  }

  identify(id: string): void {
    this.#process.send({ type: 'identify', id });
  }

  async stop(): Promise<void> {
    if (this.#lookAgain) clearTimeout(this.#lookAgain);
    await this.#process.stop();
  }

  #onStarted(): void {
    this.#process.send({ type: 'hangUp', handles: [...this.#handles.values()] });
    this.#tellWishes();
  }

  #tellWishes(): void {
    const wishes = new Map([...this.#holds.values()].flat().map((w) => [w.id, w]));
    for (const id of this.#links.keys()) if (!wishes.has(id)) this.#links.delete(id);
    for (const wish of wishes.values())
      if (!this.#links.has(wish.id)) this.#links.set(wish.id, unlinked(wish));
    this.#process.send({ type: 'want', wishes: [...wishes.values()] });
    this.#process.send({ type: 'scan', on: this.#browsing });
  }

  #take(message: FromRadio): void {
    switch (message.type) {
      case 'packet':
        for (const l of this.#listeners) l.packet?.(message.id, message.atMs, message.bytes);
        return;
      case 'clock':
        for (const l of this.#listeners) l.clock?.(message.id, message.sentMs, message.ticks);
        return;
      case 'adapter':
        return this.#onAdapter(message.problem && radioProblem(message.problem, message.detail));
      case 'seen':
        this.#seen.set(message.id, { ...message, seenMs: this.#now() });
        return this.#tellChanged();
      case 'setup':
        this.#update(message.id, { setup: message.setup });
        for (const l of this.#listeners) l.setup?.(message.id, message.setup);
        return;
      case 'handle':
        if (message.handle === null) this.#handles.delete(message.id);
        else this.#handles.set(message.id, message.handle);
        return;
      case 'startMeAgain':
        return this.#process.restart();
      case 'link': {
        const { state, reason, retryInMs } = message;
        return this.#update(message.id, { state, reason, retryInMs });
      }
      case 'battery':
        return this.#update(message.id, { batteryPct: message.pct });
      case 'rssi':
        return this.#update(message.id, { rssiDbm: message.rssiDbm });
    }
  }

  #update(id: string, change: Partial<Omit<LinkStatus, 'wish'>>): void {
    const before = this.#links.get(id);
    if (!before) return;
    const link = { ...before, ...change };
    this.#links.set(id, link);
    for (const l of this.#listeners) l.link?.(link);
    this.#tellChanged();
  }

  #onAdapter(problem: RadioProblem | null): void {
    this.#problem = problem;
    this.#ready = problem === null;
    // Whatever a dead process left is hung up by the one that reaches the adapter.
    if (this.#ready) this.#handles.clear();
    if (this.#lookAgain) clearTimeout(this.#lookAgain);
    if (problem && MAY_MEND.has(problem.code)) {
      this.#lookAgain = setTimeout(() => this.#process.restart(), LOOK_AGAIN_MS);
      this.#lookAgain.unref();
    }
    this.#tellChanged();
  }

  #onCrash(detail: string): void {
    // On macOS a missing permission aborts the process.
    const aborted = process.platform === 'darwin' && detail.startsWith('SIGABRT');
    this.#onAdapter(radioProblem(aborted ? 'no-permission' : 'crashed', detail));
    for (const id of this.#links.keys())
      this.#update(id, { state: 'lost', reason: this.#problem?.message ?? null, retryInMs: null });
  }

  #tellChanged(): void {
    const { status } = this;
    for (const l of this.#listeners) l.changed?.(status);
  }
}

const unlinked = (wish: Wish): LinkStatus => ({
  wish,
  state: 'searching',
  reason: null,
  retryInMs: null,
  batteryPct: null,
  rssiDbm: null,
  setup: null,
});
