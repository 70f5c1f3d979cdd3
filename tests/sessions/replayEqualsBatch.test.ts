import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { finish, result, start, step } from '../../src/analysis/analysis.ts';
import type { AnalysisResult } from '../../src/analysis/result.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { ReplaySource } from '../../src/sensors/sources/replay/index.ts';
import { analyseSession } from '../../src/sessions/analyseSession.ts';
import { type RecordedSession, openSession } from '../../src/sessions/openSession.ts';
import { scratch } from './makeSession.ts';
import { writeSimulated } from './simulated.ts';

/** The session as a live one: packets in the order in which they arrived. */
function played(session: RecordedSession): Promise<AnalysisResult> {
  const state = start({ hand: session.header.hand, plan: DEFAULT_PLAN });
  const source = new ReplaySource({ inputs: session.inputs(), sensors: {}, speed: Infinity });
  return new Promise((resolve, reject) => {
    source.start({
      samples: (batch) => {
        for (const sample of batch) step(state, { kind: 'sample', sample }, () => {});
      },
      event: (event) => step(state, { kind: 'event', event }, () => {}),
      link: () => {},
      end: (error) => {
        if (error !== null) return reject(new Error(error));
        finish(state, () => {});
        resolve(result(state, session.header.id));
      },
    });
  });
}

/** Equal to a hundredth of a degree or millisecond: the offset of one sensor is learnt a packet earlier or later. */
function expectNearly(a: unknown, b: unknown, path = 'result'): void {
  if (typeof b === 'number') {
    expect(typeof a, path).toBe('number');
    expect(Math.abs((a as number) - b), path).toBeLessThan(0.01);
  } else if (typeof b === 'object' && b !== null) {
    expect(Object.keys(a as object), path).toEqual(Object.keys(b));
    for (const [key, value] of Object.entries(b))
      expectNearly((a as Record<string, unknown>)[key], value, `${path}.${key}`);
  } else expect(a, path).toEqual(b);
}

describe('A recording played back packet by packet', () => {
  it.each(['right', 'left'] as const)(
    'gives what the analysis of the whole gives (simulated, %s hand)',
    async (hand) => {
      const folder = join(scratch(), 'session');
      await writeSimulated(folder, {
        seed: 7,
        hand,
        script: 'r r b r:arms-first p',
        radio: { lostShare: 0.02 },
      });
      const session = await openSession(folder);
      const whole = await analyseSession(session, DEFAULT_PLAN);
      expect(whole.repetitions).toHaveLength(5);
      // Who made it is said of a result that is kept or printed, not of one under way.
      const measured = Object.entries(whole).filter(([key]) => key !== 'madeBy');
      expectNearly(await played(session), Object.fromEntries(measured));
      await session.close();
    },
  );
});
