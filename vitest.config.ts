import { defineConfig } from 'vitest/config';

const radio = ['tests/sensors/sources/ble/**/*.test.ts', 'tests/trials/t0[1-5]-*.test.ts'];
const processes = ['tests/main/**/*.test.ts', 'tests/cli/process.test.ts'];

/** A test ends when what it waits for has come; this is for the one that waits in vain, on a machine that has much else to do. */
const PATIENCE_MS = 600_000;

/**
 * Three projects. `unit` shares its modules between files, which saves a third of the time. `alone` does not: noble
 * keeps one radio for all who import it, and what starts processes wants none of others' listeners. `browser`
 * drives the real page in a browser (`tests/browser/chromium.ts` finds it), one file at a time, and builds the page once. One after the other, and
 * only `unit` with two workers: what starts processes or looks at frames wants the machine to itself.
 */
export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          setupFiles: ['tests/setup.ts'],
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**', ...radio, ...processes],
          testTimeout: PATIENCE_MS,
          hookTimeout: PATIENCE_MS,
          isolate: false,
          maxWorkers: 2,
          sequence: { groupOrder: 0 },
        },
      },
      {
        test: {
          name: 'alone',
          setupFiles: ['tests/setup.ts'],
          include: [...radio, ...processes],
          testTimeout: PATIENCE_MS,
          hookTimeout: PATIENCE_MS,
          maxWorkers: 1,
          sequence: { groupOrder: 1 },
          expect: { poll: { timeout: 120_000 } },
        },
      },
      {
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/browser/needsBrowser.ts'],
          expect: { poll: { timeout: 120_000 } },
          testTimeout: PATIENCE_MS,
          hookTimeout: PATIENCE_MS,
          fileParallelism: false,
          isolate: false,
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
