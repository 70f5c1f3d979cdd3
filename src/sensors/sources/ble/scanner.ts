import type { Noble } from './nobleApi.ts';
import { within } from './within.ts';

const ANSWER_MS = 2000;
/** Some stacks stop reporting after a while; a fresh start costs nothing. */
const FRESH_MS = 20_000;

/** Scanning on and off, one change at a time, each awaited. */
export class Scanner {
  readonly #noble: Noble;
  readonly #now: () => number;
  #on = false;
  #sinceMs = 0;
  #turn: Promise<void> = Promise.resolve();

  constructor(noble: Noble, now: () => number) {
    this.#noble = noble;
    this.#now = now;
  }

  set(on: boolean): Promise<void> {
    this.#turn = this.#turn.then(() => this.#apply(on)).catch(() => undefined);
    return this.#turn;
  }

  async #apply(on: boolean): Promise<void> {
    const stale = this.#on && this.#now() - this.#sinceMs > FRESH_MS;
    if (on === this.#on && !stale) return;
    if (this.#on) await this.#stop();
    if (!on) return;
    this.#on = true;
    this.#sinceMs = this.#now();
    await within(this.#noble.startScanningAsync([], true), ANSWER_MS, 'prepare-timeout');
  }

  async #stop(): Promise<void> {
    this.#on = false;
    await within(this.#noble.stopScanningAsync(), ANSWER_MS, 'prepare-timeout');
  }
}
