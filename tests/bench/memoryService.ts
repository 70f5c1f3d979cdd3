/** The service as a process of its own that tells its live heap when asked; started by `memory.ts`. */
import { startService } from '../browser/pageHarness.ts';
import { simulated } from '../browser/simulated.ts';

const service = await startService(simulated('', 'right', 3, Number(process.argv[2])));

process.on('message', () => {
  (globalThis as unknown as { gc(): void }).gc();
  const { curve, ledger } = service.practice.view();
  process.send?.({
    url: service.url,
    sessionS: curve.timeS.at(-1) ?? 0,
    rehearsals: ledger.rehearsals,
    heapMb: process.memoryUsage().heapUsed / 1e6,
  });
});
