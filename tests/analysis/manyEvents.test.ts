import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { finish, result, start, step } from '../../src/analysis/analysis.ts';
import type { AnalysisInput } from '../../src/analysis/contract.ts';
import type { AnalysisResult } from '../../src/analysis/result.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import type { SessionEvent } from '../../src/sensors/sessionEvent.ts';
import { openSession } from '../../src/sessions/openSession.ts';
import { mergeEvents } from './mergeEvents.ts';
import { cpuMs } from '../sessions/cpuMs.ts';

const RECORDING = fileURLToPath(new URL('../../recordings/right-mixed.zip', import.meta.url));
const MOST = 100_000;
const inputs: AnalysisInput[] = [];
let aloneMs = 0;

function analysed(extra: readonly SessionEvent[]): AnalysisResult {
  const state = start({ hand: 'right', plan: DEFAULT_PLAN });
  for (const input of mergeEvents(inputs, extra)) step(state, input, () => undefined);
  finish(state, () => undefined);
  return result(state, 's');
}

beforeAll(async () => {
  const session = await openSession(RECORDING);
  for await (const batch of session.inputs()) inputs.push(...batch);
  await session.close();
  analysed([]);
  aloneMs = cpuMs(() => analysed([]));
});

const event = (type: SessionEvent['type'], onsetS: number): SessionEvent => ({
  type,
  onsetS,
  durationS: 0,
  value: type === 'pain' ? 5 : null,
});
/** Spread over the practice, or all at one moment of it. */
const spread = (n: number): number => 60 + (n / MOST) * 250;
const atOnce = (): number => 200;

/** Where each event costs as much as there were before, this is hundreds of times as long. */
const MANY_TIMES = 12;

describe('as many events as a recording may have', () => {
  it.each([
    ['marks, spread', 'mark-ball', spread],
    ['marks at once', 'mark-ball', atOnce],
    ['pain, spread', 'pain', spread],
    ['pain at once', 'pain', atOnce],
    ['taps at once', 'mark-tap', atOnce],
    ['ends of a break at once', 'resume', atOnce],
  ] as const)('take time in step with their number: %s', (_what, type, at) => {
    const events = Array.from({ length: MOST }, (_, n) => event(type, at(n)));
    let found: AnalysisResult | undefined;
    const ms = cpuMs(() => (found = analysed(events)));
    expect(ms).toBeLessThan(MANY_TIMES * aloneMs);
    expect(found?.warnings.length).toBeLessThanOrEqual(1001);
  });
});
