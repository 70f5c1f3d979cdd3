/** The service as a process of its own that keeps its practice and tells what became of each sample; started by `memory.ts`. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import * as analysis from '../../src/analysis/analysis.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { openKeeping } from '../../src/main/keeping.ts';
import { practiceHost } from '../../src/practice/host.ts';
import { livePractice } from '../../src/practice/livePractice.ts';
import type { SensorSource } from '../../src/sensors/sources/source.ts';
import { openSession } from '../../src/sessions/openSession.ts';
import { openStore } from '../../src/sessions/store/store.ts';
import { startHost } from '../browser/pageHarness.ts';
import { simulated } from '../browser/simulated.ts';

const made = { samples: 0, events: 0 };

/** Counts what the source says. */
function counted(source: SensorSource): SensorSource {
  return {
    kind: source.kind,
    simulated: source.simulated,
    stop: () => source.stop(),
    start: (listener) =>
      source.start({
        link: (link) => listener.link(link),
        end: (error) => listener.end(error),
        samples: (batch) => {
          made.samples += batch.length;
          listener.samples(batch);
        },
        event: (event) => {
          made.events += 1;
          listener.event(event);
        },
      }),
  };
}

const root = mkdtempSync(join(tmpdir(), 'stillcatch-memory-'));
const keeping = await openKeeping({
  root,
  date: () => new Date(),
  say: console.error,
  mostDemoS: Infinity,
});
const first = livePractice({
  practiceId: 'memory',
  source: counted(simulated('', 'right', 3, Number(process.argv[2]))),
  chain: analysis,
  settings: { hand: 'right', plan: DEFAULT_PLAN, emitFrames: true },
  now: () => performance.now(),
});
const host = practiceHost({ first });
keeping.follow(host);
const service = await startHost(host, { sessions: keeping.sessions });

function tell(): void {
  (globalThis as unknown as { gc(): void }).gc();
  const { curve, ledger } = first.view();
  process.send?.({
    url: service.url,
    sessionS: curve.timeS.at(-1) ?? 0,
    rehearsals: ledger.rehearsals,
    heapMb: process.memoryUsage().heapUsed / 1e6,
  });
}

/** Ends the practice and counts what is in the recording. */
async function end(): Promise<void> {
  const { sessionId } = first.view().keeping ?? {};
  await host.stop();
  await keeping.close();
  const store = await openStore(root);
  const session = await openSession(store.folderOf(sessionId ?? ''));
  const kept = { samples: 0, events: 0 };
  for await (const batch of session.inputs())
    for (const { kind } of batch) kept[kind === 'sample' ? 'samples' : 'events'] += 1;
  await session.close();
  await store.close();
  rmSync(root, { recursive: true, force: true });
  process.send?.({ made, kept });
}

process.on('message', (what) => void (what === 'end' ? end() : tell()));
