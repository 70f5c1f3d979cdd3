import type { CliIo } from './command.ts';

/** Below this a command is over before anybody wonders, ms. */
const PATIENCE_MS = 1000;
const EACH_MS = 200;

/** A line on standard error that is written over, only where somebody watches and only for long work. */
export function createProgress(io: CliIo, what: string) {
  const started = performance.now();
  let shownAt = 0;
  return {
    show(text: string): void {
      const now = performance.now();
      if (!io.watched || now - started < PATIENCE_MS || now - shownAt < EACH_MS) return;
      shownAt = now;
      io.err(`\r\x1b[K${what}: ${text}`);
    },
    end(): void {
      if (shownAt > 0) io.err('\r\x1b[K');
    },
  };
}

export const minutes = (seconds: number): string => {
  const whole = Math.round(seconds);
  return `${Math.floor(whole / 60)} min ${String(whole % 60).padStart(2, '0')} s`;
};
