import type { Timers } from '../sensors/sources/synthetic/index.ts';

/**
 * A clock that runs `factor` times as fast for its first `skipMs` and as the host's afterwards:
 * the demo's calibration is seen, but not waited for.
 */
export function warpedTimers(host: Timers, skipMs: number, factor: number): Timers {
  const startMs = host.now();
  const warp = (realMs: number): number =>
    realMs < skipMs / factor ? realMs * factor : realMs + skipMs - skipMs / factor;
  const unwarp = (warpedMs: number): number =>
    warpedMs < skipMs ? warpedMs / factor : warpedMs - skipMs + skipMs / factor;
  const now = (): number => warp(host.now() - startMs);
  return {
    now,
    after: (delayMs, callback) => {
      const due = unwarp(now() + delayMs) + startMs;
      return host.after(Math.max(0, due - host.now()), callback);
    },
  };
}
