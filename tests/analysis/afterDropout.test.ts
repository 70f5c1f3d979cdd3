import { describe, expect, it } from 'vitest';
import { finish, result, start, step } from '../../src/analysis/analysis.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import type { ImuSample } from '../../src/sensors/sample.ts';
import { simulateSession } from '../../src/sensors/sources/synthetic/index.ts';

type Sensor = ImuSample['sensor'];

/** Four good rehearsals; the sensors named are silent from the second's top on, for so long. */
function afterSilence(seed: number, silent: readonly Sensor[], silentS: number) {
  const hand = seed % 2 === 0 ? 'right' : 'left';
  const session = simulateSession({ seed, hand, script: 'r r r r', radio: { lostShare: 0 } });
  const fromS = (session.truth.repetitions[1]?.topS ?? 0) - 0.2;
  const lost = (s: ImuSample) =>
    silent.includes(s.sensor) && s.timeS > fromS && s.timeS < fromS + silentS;
  const state = start({ hand, plan: DEFAULT_PLAN });
  const ignore = (): void => {};
  for (const event of session.events) step(state, { kind: 'event', event }, ignore);
  const samples = session.packets.flatMap((p) => p.samples).sort((a, b) => a.timeS - b.timeS);
  for (const sample of samples) if (!lost(sample)) step(state, { kind: 'sample', sample }, ignore);
  finish(state, ignore);
  return result(state, 'x').repetitions.filter((r) => r.kind === 'rehearsal');
}

describe('after sensors were silent in the middle of a rehearsal', () => {
  it.each<[string, readonly Sensor[], number]>([
    ['both, 2.3 s', ['chest', 'trailArm'], 2.3],
    ['the chest, 1.6 s', ['chest'], 1.6],
    ['the arm, 3 s', ['trailArm'], 3],
    ['both, 0.6 s', ['chest', 'trailArm'], 0.6],
  ])('a good rehearsal is never judged a bad one (%s)', (_what, silent, silentS) => {
    for (const seed of [1, 2, 3, 4, 5, 6]) {
      const found = afterSilence(seed, silent, silentS);
      const failed = found.filter((r) => r.verdict.passed === false);
      expect(failed.map((r) => [seed, r.index, r.flags, r.verdict.cue.text])).toEqual([]);
      // and the practice goes on: the first and the last two are scored as ever
      expect(found.filter((r) => r.verdict.passed === true).length, `seed ${seed}`).toBe(3);
    }
  });
});
