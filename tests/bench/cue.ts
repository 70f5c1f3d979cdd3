/**
 * How long after a catch its verdict and cue are known, on simulated sessions: from the measured catch to the
 * arrival of the packet that completed it. The page shows it a few ms later (bench:delay); speech follows its tone.
 * `npm run bench:cue`
 */
import * as analysis from '../../src/analysis/analysis.ts';
import type { AnalysisInput, AnalysisOutput } from '../../src/analysis/contract.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { toneLengthMs } from '../../src/dashboard/sound/tones.ts';
import { percentile } from '../../src/math/stats.ts';
import { simulateSession } from '../../src/sensors/sources/synthetic/index.ts';

const BOUND_MS = 700;
const SESSIONS = 12;
const SCRIPT = 'r*6 r:arms-first r:losing-lean';

interface Arrival {
  readonly atS: number;
  readonly inputs: readonly AnalysisInput[];
}

function lagsOf(seed: number): number[] {
  const hand = seed % 2 === 0 ? 'left' : 'right';
  const session = simulateSession({ seed, hand, script: SCRIPT });
  const packets = session.packets.map(({ arrivalTimeS, samples }): Arrival => ({
    atS: arrivalTimeS,
    inputs: samples.map((sample) => ({ kind: 'sample', sample })),
  }));
  const events = session.events.map((event): Arrival => ({
    atS: event.onsetS + event.durationS,
    inputs: [{ kind: 'event', event }],
  }));
  const state = analysis.start({ hand, plan: DEFAULT_PLAN });
  const lags: number[] = [];
  for (const { atS, inputs } of [...packets, ...events].sort((a, b) => a.atS - b.atS)) {
    const take = (output: AnalysisOutput): void => {
      if (output.kind !== 'repetition' || output.repetition.kind !== 'rehearsal') return;
      const { catchS } = output.repetition;
      if (catchS !== null) lags.push((atS - catchS) * 1000);
    };
    for (const input of inputs) analysis.step(state, input, take);
  }
  return lags;
}

/** For missed catches: from the end of the movement as measured to the verdict; the student has not settled by then. */
function missedLagsOf(seed: number): number[] {
  const session = simulateSession({ seed, script: 'r:missed-catch*4' });
  const state = analysis.start({ hand: 'right', plan: DEFAULT_PLAN });
  for (const event of session.events) analysis.step(state, { kind: 'event', event }, () => {});
  return session.packets.flatMap(({ arrivalTimeS, samples }) => {
    const found: number[] = [];
    const take = (output: AnalysisOutput): void => {
      if (output.kind !== 'repetition' || output.repetition.kind !== 'rehearsal') return;
      const { catchS, endS } = output.repetition;
      if (catchS === null) found.push((arrivalTimeS - endS) * 1000);
    };
    for (const sample of samples) analysis.step(state, { kind: 'sample', sample }, take);
    return found;
  });
}

const lags = Array.from({ length: SESSIONS }, (_, i) => lagsOf(i + 1)).flat();
const ms = (p: number): string => (percentile(lags, p) ?? Number.NaN).toFixed(0);
console.log(
  `catch to verdict, ${lags.length} caught rehearsals: median ${ms(0.5)} ms, p95 ${ms(0.95)} ms (bound ${BOUND_MS})`,
);
console.log(
  `speech begins ${toneLengthMs('passed') + 40} ms after the verdict, when its tone is over`,
);

const missed = Array.from({ length: SESSIONS }, (_, i) => missedLagsOf(i + 1)).flat();
const missedMs = (p: number): string => (percentile(missed, p) ?? Number.NaN).toFixed(0);
console.log(
  `end of movement to verdict, ${missed.length} missed catches: median ${missedMs(0.5)} ms, p95 ${missedMs(0.95)} ms (bound ${BOUND_MS})`,
);
