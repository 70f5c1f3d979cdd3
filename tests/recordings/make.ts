/** Makes the shipped recordings anew: `npm run make:recordings`. Same simulator, same bytes. */
import { mkdirSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { AnalysisInput } from '../../src/analysis/contract.ts';
import { type SimulatedSession, simulateSession } from '../../src/sensors/sources/synthetic/index.ts';
import { writeSession } from '../../src/sessions/write/sessionWriter.ts';
import { zipSession } from '../../src/sessions/write/zipSession.ts';
import { expectedResults } from './expected.ts';
import { SHIPPED, type Shipped } from './sessions.ts';

const RECORDINGS = fileURLToPath(new URL('../../recordings/', import.meta.url));

/** In the order in which a recorder would have learnt of them. */
function inputsOf(session: SimulatedSession): AnalysisInput[] {
  type Timed = { readonly atS: number; readonly input: AnalysisInput };
  const events = session.events.map((event): Timed => {
    return { atS: event.onsetS + event.durationS, input: { kind: 'event', event } };
  });
  const samples = session.packets.flatMap((p) =>
    p.samples.map((sample): Timed => ({ atS: p.arrivalTimeS, input: { kind: 'sample', sample } })),
  );
  return [...events, ...samples].sort((a, b) => a.atS - b.atS).map((x) => x.input);
}

async function make(shipped: Shipped): Promise<void> {
  const session = simulateSession(shipped.options);
  const scratch = mkdtempSync(join(tmpdir(), 'stillcatch-recordings-'));
  const folder = join(scratch, shipped.name);
  const rate = typeof shipped.options.rateHz === 'number' ? shipped.options.rateHz : 100;
  const track = { samplingHz: rate, device: 'simulated sensor' };
  const header = {
    subject: shipped.subject,
    session: '1',
    hand: session.hand,
    startedAt: null,
    name: `Simulated session: ${shipped.name}`,
    simulated: true,
    tracks: { chest: track, trailArm: track },
  };
  await writeSession(folder, header, [inputsOf(session)]);
  const zip = join(RECORDINGS, `${shipped.name}.zip`);
  await zipSession(folder, zip);
  rmSync(scratch, { recursive: true });
  const expected = expectedResults(shipped, session);
  writeFileSync(
    join(RECORDINGS, `${shipped.name}.expected.json`),
    `${JSON.stringify(expected, null, 1)}\n`,
  );
  const { size } = statSync(zip);
  console.log(`${shipped.name}: ${session.durationS.toFixed(0)} s, ${(size / 1e6).toFixed(2)} MB`);
}

mkdirSync(RECORDINGS, { recursive: true });
for (const shipped of SHIPPED) await make(shipped);
