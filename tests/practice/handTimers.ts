import type { Timers } from '../../src/sensors/sources/synthetic/index.ts';

/** Timers that a test turns: everything happens as fast as it can. */
export function handTimers() {
  let nowMs = 0;
  let waiting: { readonly dueMs: number; readonly call: () => void }[] = [];
  const timers: Timers = {
    now: () => nowMs,
    after: (ms, call) => {
      // less than a double's last digit would not move the clock: a timer set anew for it would never end
      const entry = { dueMs: nowMs + Math.max(ms, 1e-3), call };
      waiting.push(entry);
      return () => (waiting = waiting.filter((w) => w !== entry));
    },
  };
  const pass = (ms: number): void => {
    const endMs = nowMs + ms;
    for (;;) {
      const next = waiting.sort((a, b) => a.dueMs - b.dueMs)[0];
      if (next === undefined || next.dueMs > endMs) break;
      waiting = waiting.filter((w) => w !== next);
      nowMs = Math.max(nowMs, next.dueMs);
      next.call();
    }
    nowMs = endMs;
  };
  return { timers, pass, now: () => nowMs };
}
