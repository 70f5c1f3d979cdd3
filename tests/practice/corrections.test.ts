import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as analysis from '../../src/analysis/analysis.ts';
import type { AnalysisInput, AnalysisOutput } from '../../src/analysis/contract.ts';
import { type CorrectedKind, ledgerEntries } from '../../src/coaching/ledger.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { livePractice } from '../../src/practice/livePractice.ts';
import { simulateSession } from '../../src/sensors/sources/synthetic/index.ts';
import type { SessionEvent } from '../../src/sensors/sessionEvent.ts';
import { PAIN_SIGNS } from '../../src/sensors/sessionEvent.ts';
import { readEvents } from '../../src/sessions/read/events.ts';
import { openFiles } from '../../src/sessions/files/openFiles.ts';
import { createSessionWriter } from '../../src/sessions/write/sessionWriter.ts';
import { scratch } from '../sessions/makeSession.ts';
import { HandSource } from './scripted.ts';

const KINDS = ['rehearsal', 'ball', 'practiceSwing', 'ignored'] as const;

/** What a person says after a repetition: of any that there is by then, counted from the first. */
type Said = { readonly of: number; readonly kind: CorrectedKind } | 'undo';
interface Scene {
  readonly script: readonly ('r' | 'b' | 'p')[];
  /** One list after each repetition. */
  readonly said: readonly (readonly Said[])[];
}

const said = fc.oneof(
  { weight: 3, arbitrary: fc.record({ of: fc.nat(20), kind: fc.constantFrom(...KINDS) }) },
  { weight: 2, arbitrary: fc.constant('undo' as const) },
);
const scenes = fc.array(
  fc.tuple(fc.constantFrom('r', 'b', 'p'), fc.array(said, { maxLength: 4 })),
  {
    minLength: 2,
    maxLength: 4,
  },
);

const sceneOf = (parts: readonly (readonly ['r' | 'b' | 'p', readonly Said[]])[]): Scene => ({
  script: parts.map(([word]) => word),
  said: parts.map(([, what]) => what),
});

/** The simulated session practised live with everything that is said; what a recorder would have kept. */
function practise(seed: number, { script, said: saids }: Scene) {
  const source = new HandSource();
  const states: analysis.AnalysisState[] = [];
  const chain = {
    ...analysis,
    start: (...settings: Parameters<typeof analysis.start>) => {
      states.push(analysis.start(...settings));
      return states[0]!;
    },
  };
  const clock = { ms: 0 };
  const practice = livePractice({
    practiceId: 'c',
    source,
    chain,
    settings: { hand: 'right', plan: DEFAULT_PLAN },
    now: () => clock.ms,
  });
  const events: SessionEvent[] = [];
  practice.signals.subscribe((s) => s.kind === 'event' && events.push(s.event));
  practice.start();
  const { packets, events: asked } = simulateSession({
    seed,
    script: script.join(' '),
    calibration: 'short',
  });
  const due = [...asked];
  let seen = 0;
  for (const packet of packets) {
    clock.ms = packet.arrivalTimeS * 1000;
    while (due[0] && due[0].onsetS + due[0].durationS <= packet.arrivalTimeS)
      source.listener?.event(due.shift()!);
    source.listener?.samples(packet.samples);
    const count = practice.view().strip.length;
    for (; seen < count; seen++)
      for (const one of saids[seen] ?? [])
        practice.obey(
          one === 'undo'
            ? { type: 'undo' }
            : { type: 'correct', index: 1 + (one.of % (seen + 1)), kind: one.kind },
        );
  }
  const result = practice.result('s')!;
  return { practice, events, packets, result, state: states[0]! };
}

/** Analysed from the packets and the kept events alone. */
function analysedAgain(packets: ReturnType<typeof practise>['packets'], events: SessionEvent[]) {
  const ends = (e: SessionEvent): number => e.onsetS + e.durationS;
  const inputs: { atS: number; input: AnalysisInput }[] = packets.flatMap((p) =>
    p.samples.map((sample) => ({ atS: sample.timeS, input: { kind: 'sample', sample } as const })),
  );
  inputs.push(
    ...events.map((event) => ({ atS: ends(event), input: { kind: 'event', event } as const })),
  );
  inputs.sort((a, b) => a.atS - b.atS);
  const state = analysis.start({ hand: 'right', plan: DEFAULT_PLAN });
  const ignore = (_: AnalysisOutput): void => undefined;
  for (const { input } of inputs) analysis.step(state, input, ignore);
  analysis.finish(state, ignore);
  return { entries: ledgerEntries(state.ledger), result: analysis.result(state, 's') };
}

/** Through the text of events.tsv and back. */
async function keptAs(events: readonly SessionEvent[]): Promise<SessionEvent[]> {
  const folder = scratch();
  const header = { subject: '1', session: '1', hand: 'right', startedAt: null } as const;
  const writer = await createSessionWriter(folder, header, { flushEveryMs: 0 });
  for (const event of events) writer.event(event);
  await writer.close();
  const files = await openFiles(folder);
  const name = files.names.find((n) => n.endsWith('_events.tsv'))!;
  const kept = [...(await readEvents(files, name))];
  await files.close();
  return kept;
}

describe('Corrections', { timeout: 120_000 }, () => {
  it('of any repetitions in any order, and their undoing, are the same when the recording is analysed again', async () => {
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: 40 }), scenes, async (seed, parts) => {
        const { practice, events, packets, state, result } = practise(seed, sceneOf(parts));
        const again = analysedAgain(packets, await keptAs(events));
        expect(again.entries).toEqual(ledgerEntries(state.ledger));
        expect(again.result.ledger).toEqual(result.ledger);
        expect(again.result.carryOver).toEqual(result.carryOver);
        // what the person saw was that, too
        const { strip, ledger } = practice.view();
        expect(strip.map((e) => [e.index, e.kind])).toEqual(
          again.entries.map((e) => [e.index, e.kind]),
        );
        expect(ledger.entries).toBe(again.result.ledger.entries);
        await practice.stop();
      }),
      { numRuns: 8 },
    );
  });
});

describe('Pain', () => {
  it('is recorded with what it is like, and warns the same when analysed again', async () => {
    for (const sign of PAIN_SIGNS) {
      const event = { type: 'pain', onsetS: 1, durationS: 0, value: 2, signs: [sign] } as const;
      expect(await keptAs([event])).toEqual([event]);
      const state = analysis.start({ hand: 'right', plan: DEFAULT_PLAN });
      const ids: string[] = [];
      analysis.step(state, { kind: 'event', event }, () => undefined);
      analysis.finish(state, (o) => void (o.kind === 'warning' && ids.push(o.warning.id)));
      expect(ids).toEqual(['pain-high']);
    }
  });
});
