import { describe, expect, it } from 'vitest';
import { result, start, step } from '../../src/analysis/analysis.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { simulateSession } from '../../src/sensors/sources/synthetic/index.ts';
import { analyse, inputsOf, withEvent } from './simulated.ts';

describe('a pause in the middle of a rehearsal', () => {
  const options = { seed: 45, script: 'r r r' };
  const inputs = inputsOf(options);
  const { truth } = simulateSession(options);
  const whole = analyse(inputs).result.repetitions;
  const second = truth.repetitions[1];
  if (second?.kind !== 'rehearsal') throw new Error('not the script that was asked for');

  it.each([
    ['the backswing', second.topS - 0.4],
    ['the hold', second.topS + 0.4],
    ['the release', second.chestOnsetS + 0.15],
  ])('makes no repetition of what was only half seen (%s)', (_when, pauseS) => {
    for (const resumeS of [second.endS + 0.6, (truth.repetitions[2]?.startS ?? 0) - 0.5]) {
      const paused = withEvent(withEvent(inputs, 'pause', pauseS), 'resume', resumeS);
      const found = analyse(paused).result.repetitions;
      expect(found.map((r) => r.topS)).toEqual([whole[0]?.topS, whole[2]?.topS]);
    }
  });
});

describe('the result as it stands', () => {
  it('is read without changing anything, in the middle of a calibration too', () => {
    const state = start({ hand: 'right', plan: DEFAULT_PLAN });
    for (const input of inputsOf({ seed: 45 })) {
      step(state, input, () => {});
      if (input.kind !== 'event') continue;
      const before = state.calibrating.calibration;
      result(state, 'x');
      expect(state.calibrating.calibration).toBe(before);
    }
    expect(state.calibrating.calibration?.quality.accepted).toBe(true);
  });
});
