import type { Timers } from '../../src/sensors/sources/synthetic/index.ts';

/**
 * The host's clock, except that it can stand: whoever looks at a step for long does not miss it,
 * however busy the machine is.
 */
export class HaltableClock implements Timers {
  /** Asked before each callback; once true, the clock stands until `goOn`. */
  haltWhen: () => boolean = () => false;
  readonly #waiting = new Set<() => void>();
  #lostMs = 0;
  #haltedMs: number | null = null;

  now(): number {
    return (this.#haltedMs ?? performance.now()) - this.#lostMs;
  }

  after(delayMs: number, callback: () => void): () => void {
    const run = (): void => {
      if (this.#haltedMs === null && this.haltWhen()) this.#haltedMs = performance.now();
      if (this.#haltedMs === null) callback();
      else this.#waiting.add(run);
    };
    const timer = setTimeout(run, delayMs);
    return () => {
      clearTimeout(timer);
      this.#waiting.delete(run);
    };
  }

  goOn(): void {
    if (this.#haltedMs !== null) this.#lostMs += performance.now() - this.#haltedMs;
    this.#haltedMs = null;
    this.haltWhen = () => false;
    const due = [...this.#waiting];
    this.#waiting.clear();
    for (const run of due) run();
  }
}
