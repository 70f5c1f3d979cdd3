import { setTimeout as pause } from 'node:timers/promises';

/** Does something again and again: at once when it is woken, every few minutes else, ever more seldom while it fails. */
export interface Rounds {
  wake(): void;
  state(): { readonly problem: string | null; readonly nextTryMs: number | null };
  /** Fulfilled when the round under way is over, or will not end soon: the hub may not answer. */
  close(): Promise<void>;
}

export interface RoundsOptions {
  /** @returns why it did not succeed, in words, or `null` */
  readonly round: () => Promise<string | null>;
  /** Epoch ms. */
  readonly now: () => number;
  readonly pausesMs?: readonly number[] | undefined;
}

/** Choices: the last goes on for days. */
const PAUSES_MS = [5000, 15_000, 60_000, 300_000, 900_000, 3_600_000];
const EVERY_MS = 180_000;
const LEAVE_MS = 1000;

export function rounds({ round, now, pausesMs = PAUSES_MS }: RoundsOptions): Rounds {
  let problem: string | null = null;
  let failures = 0;
  let nextTryMs: number | null = null;
  let timer: NodeJS.Timeout | null = null;
  let running: Promise<void> | null = null;
  let again = false;
  let closed = false;
  const arm = (): void => {
    const waitMs =
      problem === null ? EVERY_MS : (pausesMs[Math.min(failures, pausesMs.length) - 1] ?? EVERY_MS);
    nextTryMs = problem === null ? null : now() + waitMs;
    timer = setTimeout(start, waitMs);
    timer.unref();
  };
  const start = (): void => {
    if (timer !== null) clearTimeout(timer);
    again = true;
    running ??= run().finally(() => (running = null));
  };
  const run = async (): Promise<void> => {
    while (again && !closed) {
      again = false;
      problem = await round();
      failures = problem === null ? 0 : failures + 1;
    }
    if (!closed) arm();
  };
  start();
  return {
    wake: start,
    state: () => ({ problem, nextTryMs }),
    async close() {
      closed = true;
      if (timer !== null) clearTimeout(timer);
      await Promise.race([running, pause(LEAVE_MS, undefined, { ref: false })]);
    },
  };
}
