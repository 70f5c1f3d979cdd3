import { keepNewest } from './keepNewest.ts';

/** Wrong tries that cost nothing; then each waits twice as long as the one before, up to the longest. Choices. */
const FREE = 5;
const FIRST_MS = 1000;
const LONGEST_MS = 40_000;
/** So long without a try, and it counts from the beginning. */
const FORGOTTEN_MS = 3_600_000;
/** Names that are remembered, the newest; a choice. */
const MOST_KEPT = 5000;

interface Tries {
  readonly count: number;
  readonly lastMs: number;
}

const waitAfter = (count: number): number =>
  count < FREE ? 0 : Math.min(LONGEST_MS, FIRST_MS * 2 ** Math.min(count - FREE, 16));

/**
 * Waits between tries at one account, wherever they come from: fewer than 100 an hour, and whoever knows the password
 * waits 40 s at most. Kept in memory. @param now ms of a monotonic clock
 */
export class AccountWaits {
  readonly #tries = new Map<string, Tries>();
  readonly #now: () => number;

  constructor(now: () => number = () => performance.now()) {
    this.#now = now;
  }

  /** Counts a try; ms to wait where it came too early and may not go on, else 0. */
  take(account: string): number {
    const nowMs = this.#now();
    const before = this.#tries.get(account);
    const counts = before !== undefined && nowMs - before.lastMs < FORGOTTEN_MS;
    const { count, lastMs } = counts ? before : { count: 0, lastMs: -Infinity };
    const leftMs = lastMs + waitAfter(count) - nowMs;
    if (leftMs > 0) return leftMs;
    keepNewest(this.#tries, account, { count: count + 1, lastMs: nowMs }, MOST_KEPT);
    return 0;
  }

  /** The password was right. */
  passed(account: string): void {
    this.#tries.delete(account);
  }
}
