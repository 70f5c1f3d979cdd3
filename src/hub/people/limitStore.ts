import type { FastifyRateLimitStore } from '@fastify/rate-limit';
import { keepNewest } from './keepNewest.ts';

/** Whoever asks from more names than so many drops the counts that are oldest. A choice. */
const MOST_KEPT = 5000;

interface Counted {
  count: number;
  /** ms of the monotonic clock. */
  sinceMs: number;
}

/**
 * Counts of one limit in this process. By the monotonic clock: setting the computer's clock neither forgives nor
 * locks out. @param now ms, for tests
 */
export class MonotonicStore implements FastifyRateLimitStore {
  readonly #counts = new Map<string, Counted>();
  readonly #now: () => number;

  constructor(_options?: unknown, now: () => number = () => performance.now()) {
    this.#now = now;
  }

  incr(
    key: string,
    done: (error: Error | null, result?: { current: number; ttl: number }) => void,
    timeWindow: number,
  ): void {
    const nowMs = this.#now();
    const there = this.#counts.get(key);
    const counts = there !== undefined && nowMs - there.sinceMs < timeWindow;
    const counted = counts ? there : { count: 0, sinceMs: nowMs };
    counted.count += 1;
    keepNewest(this.#counts, key, counted, MOST_KEPT);
    done(null, { current: counted.count, ttl: timeWindow - (nowMs - counted.sinceMs) });
  }

  child(): MonotonicStore {
    return new MonotonicStore(undefined, this.#now);
  }
}
